/** New planes: by kind and size, by the number of a pair, by what was measured, or against arcs on the screen. */
import type { Trouble } from "mouldwright/measure";
import { LARGEST_PAIR_NUMBER, PLANE_KINDS, pairSizeMm } from "mouldwright/shelf";
import { useId, useMemo, useState } from "react";
import { Button } from "react-aria-components";
import { Choice } from "../../common/choice.tsx";
import { useLengthWords } from "../../common/length-words.ts";
import { CompareArcs } from "./compare-arcs.tsx";
import { MeasuredSole } from "./measured-sole.tsx";
import {
  entriesToAdd,
  filledEntry,
  type NewPlanes,
  newPlanesOf,
  withRadius,
  withSize,
} from "./new-planes.ts";
import { KIND_WORDS } from "./plane-fields.ts";
import { PlaneFieldsForm } from "./plane-fields-form.tsx";
import { sizeWords } from "./plane-words.ts";
import { entriesOf, type FileKind, shelfOn, withPlanesAdded } from "./shelf-edits.ts";
import { tryChange } from "./use-shelf.ts";

const MEANS = [
  { value: "size", words: "By size" },
  { value: "measured", words: "Measured" },
  { value: "arcs", words: "Against arcs" },
] as const;
type Means = (typeof MEANS)[number]["value"];

/** What can be made here: a drawn sole comes in with a shelf file. */
const KINDS = PLANE_KINDS.filter((kind) => kind !== "shaped");

export function AddPlanes() {
  const { unit } = useLengthWords();
  const [planes, setPlanes] = useState<NewPlanes>(() => newPlanesOf("hollow"));
  const [means, setMeans] = useState<Means>("size");
  const [troubles, setTroubles] = useState<readonly Trouble[]>([]);
  const [said, setSaid] = useState("");
  const filled = useMemo(() => filledEntry(planes), [planes]);
  const isCurved = planes.kind === "hollow" || planes.kind === "round";
  const set = (next: NewPlanes): void => {
    setPlanes(next);
    setTroubles([]);
    setSaid("");
  };
  const add = (): void => {
    const entries = entriesToAdd(planes);
    let names = "";
    const refusals = tryChange(entries.length === 1 ? "a plane more" : "two planes more", (job) => {
      const outcome = withPlanesAdded(job, entries);
      if (outcome.ok) names = namesOf(outcome.value, entries.length);
      return outcome;
    });
    setTroubles(refusals);
    setSaid(refusals.length === 0 ? `On the shelf: ${names}.` : "");
  };
  const takeRadius = (radiusMm: number, widthMm?: number): void => {
    set(withRadius(planes, radiusMm, widthMm));
    setMeans("size");
  };
  return (
    <div className="add-planes">
      <KindField kind={planes.kind} onChange={(kind) => set(newPlanesOf(kind))} />
      {isCurved ? (
        <>
          <Choice
            label="Which of the pair"
            value={planes.isPair ? "pair" : planes.kind === "round" ? "round" : "hollow"}
            options={[
              { value: "pair", words: "The pair" },
              { value: "hollow", words: "Hollow" },
              { value: "round", words: "Round" },
            ]}
            onChange={(which) =>
              set(
                which === "pair"
                  ? { ...planes, isPair: true }
                  : { kind: which, isPair: false, entry: { ...planes.entry, kind: which } },
              )
            }
          />
          <Choice label="How the size is told" value={means} options={MEANS} onChange={setMeans} />
        </>
      ) : null}
      {isCurved && means === "measured" ? <MeasuredSole onTake={takeRadius} /> : null}
      {isCurved && means === "arcs" ? (
        <CompareArcs kind={planes.kind === "round" ? "round" : "hollow"} onTake={takeRadius} />
      ) : null}
      {isCurved && means !== "size" ? null : (
        <>
          {isCurved ? <PairField unit={unit} onTake={(sizeMm) => set(withRadius(planes, sizeMm))} /> : null}
          <PlaneFieldsForm
            kind={planes.kind}
            entry={planes.entry}
            filled={filled}
            troubles={troubles}
            mayBeBothHands
            onChange={(key, value) => set(withSize(planes, key, value))}
          />
          <div className="tools">
            <Button className="button button-main" onPress={add}>
              {entriesToAdd(planes).length === 1 ? "Put it on the shelf" : "Put both on the shelf"}
            </Button>
          </div>
        </>
      )}
      <p role="status" className="added">
        {said}
      </p>
    </div>
  );
}

function namesOf(job: Parameters<typeof shelfOn>[0], count: number): string {
  const shelf = shelfOn(job);
  if (!shelf.ok) return "";
  const names = entriesOf(shelf.value)
    .slice(-count)
    .flatMap(({ name }) => (typeof name === "string" ? [name] : []));
  return names.join(" and ");
}

function KindField({
  kind,
  onChange,
}: {
  readonly kind: FileKind;
  readonly onChange: (kind: FileKind) => void;
}) {
  const fieldId = useId();
  return (
    <div className="field">
      <label htmlFor={fieldId}>Kind of plane</label>
      <select
        id={fieldId}
        value={kind === "round" ? "hollow" : kind}
        onChange={({ target }) => {
          const chosen = KINDS.find((known) => known === target.value);
          if (chosen !== undefined) onChange(chosen);
        }}
      >
        {KINDS.filter((known) => known !== "round").map((known) => (
          <option key={known} value={known}>
            {known === "hollow" ? "Hollow and round" : KIND_WORDS[known].one}
          </option>
        ))}
      </select>
    </div>
  );
}

const NUMBERS = Array.from({ length: LARGEST_PAIR_NUMBER }, (_, index) => index + 1);

/** Numbers stamped on pairs: makers vary, so what is measured goes before them. */
function PairField({
  unit,
  onTake,
}: {
  readonly unit: "mm" | "in";
  readonly onTake: (sizeMm: number) => void;
}) {
  const fieldId = useId();
  return (
    <div className="field">
      <label htmlFor={fieldId}>By the number of the pair</label>
      <select
        id={fieldId}
        value=""
        onChange={({ target }) => {
          const sizeMm = pairSizeMm(Number(target.value));
          if (sizeMm !== undefined) onTake(sizeMm);
        }}
      >
        <option value="">Choose a number…</option>
        {NUMBERS.map((number) => (
          <option key={number} value={number}>
            No. {number}: {sizeWords(pairSizeMm(number) ?? 0, unit)}
          </option>
        ))}
      </select>
      <span className="field-note">The commonest numbering; makers vary, so hold the sole to an arc.</span>
    </div>
  );
}
