// How to call the calculators from JavaScript: one function each, plain objects in and out.
import init, { tape } from "../index.js";

const show = (id, value) => {
  document.getElementById(id).textContent = JSON.stringify(value, null, 2);
};

await init();

// A shelf between two legs and two cleats of a potting bench, on a tape in thirty-seconds.
const answered = tape({ strip: ["61 3/8 - 2 × 3 1/2 - 2 × 3/4", "A / 2"] }, { fineness: 32 });
if (answered.ok) {
  const { exact, shown, spoken } = answered.results.read;
  show("answered", { exact, shown, spoken });
}

const refused = tape({ strip: "3 3/8 plus 2" });
if (!refused.ok) {
  show("refused", refused.problems);
}
