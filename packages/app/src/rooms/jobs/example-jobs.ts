/** The pieces of the chart cabinet, each with its shelf inside, so that a job is whole by itself. */
import { type Job, readJob } from "mouldwright/job";
import { bug } from "mouldwright/measure";
import { readShelf, shelfFile } from "mouldwright/shelf";
import barometerFrame from "../../../../../examples/barometer-frame.json?raw";
import cornice from "../../../../../examples/cornice.json?raw";
import glazingBar from "../../../../../examples/glazing-bar.json?raw";
import pilaster from "../../../../../examples/pilaster.json?raw";
import plinth from "../../../../../examples/plinth.json?raw";
import fullShelf from "../../../../../examples/shelves/full.json?raw";

/** The cornice first: it lies on the bench at the first visit. */
export function exampleJobs(): readonly Job[] {
  return [cornice, plinth, pilaster, barometerFrame, glazingBar].map(withShelfInside);
}

function withShelfInside(text: string): Job {
  const job = readJob(text);
  if (!job.ok) return bug("an example that cannot be read", { code: job.trouble.code });
  const shelf = readShelf(fullShelf);
  if (!shelf.ok) return bug("the example's shelf cannot be read", { code: shelf.trouble.code });
  return { ...job.value, shelf: shelfFile(shelf.value) };
}
