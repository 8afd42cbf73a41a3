/** A shelf file chosen by the maker: its troubles, or whether its planes come beside those here or in their place. */
import { cataloguedTrouble, type Trouble } from "mouldwright/measure";
import type { Shelf } from "mouldwright/shelf";
import { useState } from "react";
import { Button, FileTrigger } from "react-aria-components";
import { change } from "../../bench/job-on-bench.ts";
import { useLengthWords } from "../../common/length-words.ts";
import { TroubleWords } from "../../common/trouble-words.tsx";
import { withShelfAdded } from "./shelf-edits.ts";
import { readShelfFile, withShelfReplaced } from "./shelf-files.ts";
import { tryChange } from "./use-shelf.ts";

export interface BringInProps {
  readonly hasPlanes: boolean;
}

export interface Chosen {
  readonly fileName: string;
  readonly shelf: Shelf;
}

export function useBringIn({ hasPlanes }: BringInProps) {
  const { unit } = useLengthWords();
  const [chosen, setChosen] = useState<Chosen | null>(null);
  const [troubles, setTroubles] = useState<readonly Trouble[]>([]);
  const [said, setSaid] = useState("");
  const read = async (files: FileList | null): Promise<void> => {
    const file = files?.[0];
    if (file === undefined) return;
    setSaid("");
    setChosen(null);
    const outcome = await readShelfFile(file, unit).catch((error: unknown) => {
      const detail = error instanceof Error ? error.message : String(error);
      return { ok: false as const, trouble: cataloguedTrouble("internal", file.name, { detail }), more: [] };
    });
    if (!outcome.ok) {
      setTroubles([outcome.trouble, ...(outcome.more ?? [])]);
      return;
    }
    setTroubles([]);
    if (hasPlanes) setChosen({ fileName: file.name, shelf: outcome.value });
    else replaceBy(outcome.value);
  };
  const replaceBy = (shelf: Shelf): void => {
    change("shelf from a file", (job) => withShelfReplaced(job, shelf));
    setChosen(null);
    setSaid(`${planes(shelf.planes.length)} on the shelf now.`);
  };
  const add = (shelf: Shelf): void => {
    let words = "";
    const refusals = tryChange("planes from a file", (job) => {
      const outcome = withShelfAdded(job, shelf);
      if (!outcome.ok) return outcome;
      const { addedCount, knownCount } = outcome.value;
      words =
        addedCount === 0
          ? `Nothing to add: ${planes(knownCount).toLowerCase()}, all here already.`
          : `${planes(addedCount)} added${knownCount === 0 ? "" : `; ${planes(knownCount).toLowerCase()} stood here already`}.`;
      return { ...outcome, value: addedCount === 0 ? job : outcome.value.job };
    });
    setTroubles(refusals);
    setChosen(null);
    setSaid(words);
  };
  return { chosen, troubles, said, read, replaceBy, add, giveUp: () => setChosen(null) };
}

function planes(count: number): string {
  return count === 1 ? "One plane" : `${count} planes`;
}

type BringIn = ReturnType<typeof useBringIn>;

export function BringInButton({ read, words }: { readonly read: BringIn["read"]; readonly words: string }) {
  return (
    <FileTrigger acceptedFileTypes={["application/json", ".json"]} onSelect={(files) => void read(files)}>
      <Button className="button">{words}</Button>
    </FileTrigger>
  );
}

export function BringInNotices({ bringIn }: { readonly bringIn: BringIn }) {
  const { chosen, troubles, said, replaceBy, add, giveUp } = bringIn;
  return (
    <>
      {troubles.length === 0 ? null : (
        <>
          <p className="quiet">The file was not taken; your shelf stands as it was.</p>
          <TroubleWords troubles={troubles} />
        </>
      )}
      {chosen === null ? null : (
        <section className="panel notice-choice" aria-label="Shelf from a file">
          <p>
            <strong>{chosen.fileName}</strong> holds {planes(chosen.shelf.planes.length).toLowerCase()}.
          </p>
          <div className="tools">
            <Button className="button button-main" onPress={() => add(chosen.shelf)}>
              Add those that are not here yet
            </Button>
            <Button className="button" onPress={() => replaceBy(chosen.shelf)}>
              Put them in place of mine
            </Button>
            <Button className="button" onPress={giveUp}>
              Leave it
            </Button>
          </div>
        </section>
      )}
      <p className="quiet" role="status">
        {said}
      </p>
    </>
  );
}
