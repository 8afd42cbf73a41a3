import { drawnFor } from "./tests/plans/one-run.ts";
import { shelfOf } from "./tests/plans/random-shelves.ts";
import { planSteps } from "./packages/core/src/planning/plan-section.ts";
import { workCounted } from "./packages/core/src/measure/index.ts";
import * as one from "./tests/plans/one-run.ts";
const n = Number(process.argv[2]);
const { section, planes } = drawnFor(n);
const shelf = shelfOf(planes);
const steps = planSteps({ section, shelf } as any);
let w = workCounted(), c = process.cpuUsage(); let says = "begin";
for (;;) { const s = steps.next(); const u = process.cpuUsage(c); console.log(says.padEnd(40), ((workCounted()-w)/1e6).toFixed(2)+"M", ((u.user+u.system)/1e3).toFixed(0)+" ms"); w = workCounted(); c = process.cpuUsage(); if (s.done) break; says = (s.value as any).says; }
