//! What the journeys through the built app share.
