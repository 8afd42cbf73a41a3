/** A section that came as a drawing: its lines and curves with the planes that make them, its points by number. */
import { circleOf, type Point } from "mouldwright/curve";
import { Button } from "react-aria-components";
import { change } from "../../../bench/job-on-bench.ts";
import { LengthField } from "../../../common/length-field.tsx";
import type { Verdict } from "../answer/verdicts.ts";
import type { PlacedPart } from "../chain/laid-chain.ts";
import { asParts, pathOfJob, withVertex } from "../chain/path-edits.ts";
import { PartRow } from "../list/part-row.tsx";
import { arcAfter, MOST_VERTICES, withRadius } from "../pull/pull-vertex.ts";
import type { Drawn } from "../use-drawn.ts";

export interface PathPanelProps {
  readonly drawn: Drawn;
  readonly numbered: readonly PlacedPart[];
  readonly names: readonly string[];
  readonly verdicts: readonly Verdict[];
  readonly isOld: boolean;
  readonly selected: number | null;
  readonly onSelect: (index: number | null) => void;
}

export function PathPanel({ drawn, numbered, names, verdicts, isOld, selected, onSelect }: PathPanelProps) {
  const { job, section } = drawn;
  const parted = section === null || drawn.isEarlier ? null : asParts(job, section);
  const count = pathOfJob(job).length;
  return (
    <section className="parts" aria-label="Lines and curves">
      <div className="path-note">
        <p>
          This section came as a drawing.{" "}
          {count > MOST_VERTICES
            ? `It has ${count} points, too many to pull at.`
            : "Its points can be moved and its curves bent, on the board or by number."}
        </p>
        {parted === null ? (
          <p className="quiet">
            It cannot be read as parts: its back or an edge is worked too, or it has too many pieces. To put
            in or take out parts, draw it anew from parts.
          </p>
        ) : (
          <Button
            className="button"
            onPress={() => {
              change("read as parts", () => parted);
              onSelect(null);
            }}
          >
            Read it as parts
          </Button>
        )}
      </div>
      <ol className="part-rows" aria-label="Lines and curves from the far edge">
        {numbered.map((place) => (
          <PartRow
            key={place.index}
            index={place.index}
            name={names[place.index] ?? "flat"}
            verdict={verdicts[place.index]}
            isOld={isOld}
            isOpen={selected === place.index}
            troubles={[]}
            drop={null}
            grip={null}
            onToggle={() => onSelect(selected === place.index ? null : place.index)}
          >
            {selected === place.index ? <EndsOf drawn={drawn} place={place} /> : null}
          </PartRow>
        ))}
      </ol>
    </section>
  );
}

function EndsOf({ drawn, place }: { readonly drawn: Drawn; readonly place: PlacedPart }) {
  const from = nearestVertex(drawn, place.to);
  const to = nearestVertex(drawn, place.from);
  const bent = arcAfter(drawn.job, from);
  return (
    <div className="part-sizes">
      <VertexFields drawn={drawn} index={from} />
      {to === from ? null : <VertexFields drawn={drawn} index={to} />}
      {bent === null ? null : (
        <LengthField
          label="Radius"
          valueMm={circleOf(bent).radiusMm}
          leastMm={Math.hypot(bent.to.x - bent.from.x, bent.to.y - bent.from.y) / 2}
          mostMm={1000}
          onChange={(radiusMm) => change("radius", (job) => withRadius(job, from, radiusMm))}
        />
      )}
    </div>
  );
}

function VertexFields({ drawn, index }: { readonly drawn: Drawn; readonly index: number }) {
  const [x = 0, y = 0] = pathOfJob(drawn.job)[index] ?? [];
  const { widthMm, thicknessMm } = drawn.job.stick;
  const move = (toX: number, toY: number): void =>
    change(`point ${index + 1} moved`, (job) => withVertex(job, index, toX, toY));
  return (
    <>
      <LengthField
        label={`Point ${index + 1}, from the gauge edge`}
        valueMm={x}
        leastMm={0}
        mostMm={widthMm}
        onChange={(next) => move(next, y)}
      />
      <LengthField
        label={`Point ${index + 1}, up`}
        valueMm={y}
        leastMm={0}
        mostMm={thicknessMm}
        onChange={(next) => move(x, next)}
      />
    </>
  );
}

function nearestVertex({ job }: Drawn, at: Point): number {
  const away = pathOfJob(job).map(([x = 0, y = 0]) => Math.hypot(x - at.x, y - at.y));
  return away.indexOf(Math.min(...away));
}
