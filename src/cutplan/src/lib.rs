//! The cut planner: what to buy, and which part comes from which board, with a proof.
