// How many questions a second are answered through JavaScript: read, worked out, laid out with
// drawing and working, and handed over as a plain object. A measurement, not a test.
//
//   cargo xtask build && node src/js/example/speed.mjs
import init, { tape } from "../../../dist/js/node.js";

await init();

for (const strip of ["3 3/8", "61 3/8 - 2 × 3 1/2 - 2 × 3/4", "(31 - 1/8)/2", "2' 4 1/2\" + 45mm"]) {
  const rounds = 3000;
  const start = performance.now();
  for (let i = 0; i < rounds; i++) tape({ strip });
  console.log(`${strip}: ${Math.round((rounds / (performance.now() - start)) * 1000)} a second`);
}
