/** What would stand on the shelf, and the three ways to begin. */

import { readShelf, shelfFile } from "mouldwright/shelf";
import { useMemo } from "react";
import { Button } from "react-aria-components";
import fullShelf from "../../../../../examples/shelves/full.json?raw";
import smallShelf from "../../../../../examples/shelves/small.json?raw";
import { change } from "../../bench/job-on-bench.ts";

export function EmptyShelf({ onAdd }: { readonly onAdd: () => void }) {
  const samples = useMemo(
    () => [
      { words: "A few planes to try with", text: smallShelf },
      { words: "A full shelf to try with", text: fullShelf },
    ],
    [],
  );
  const put = (text: string): void => {
    const read = readShelf(text);
    if (read.ok) change("a shelf to try with", (job) => ({ ...job, shelf: shelfFile(read.value) }));
  };
  return (
    <section className="panel empty-shelf" aria-label="Empty shelf">
      <p>
        <strong>Your planes would stand here,</strong> each with its sole drawn true. The program plans with
        these alone: what is not on the shelf is not used.
      </p>
      <p>
        Add the planes you own by their size, by the number of a pair, or by holding a sole against arcs on
        this screen. Or bring in a shelf file that you saved before.
      </p>
      <div className="tools">
        <Button className="button button-main" onPress={onAdd}>
          Add your planes
        </Button>
        {samples.map(({ words, text }) => (
          <Button key={words} className="button" onPress={() => put(text)}>
            {words}
          </Button>
        ))}
      </div>
    </section>
  );
}
