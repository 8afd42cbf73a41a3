/** What a run is reckoned from: walls and corners from left to right, its two ends, spring, and the sticks. */
import type { CornerJoint, RunEnd } from "mouldwright/making";
import { Button } from "react-aria-components";
import { change, useShownJob } from "../../bench/job-on-bench.ts";
import { FigureField } from "../../common/figure-field.tsx";
import { LengthField } from "../../common/length-field.tsx";
import {
  choicesOf,
  type RunCornerChoice,
  withCorner,
  withFit,
  withRunEnd,
  withWall,
  withWallAdded,
  withWallRemoved,
} from "../../fitting/fit-choices.ts";
import { SpringFields } from "./corner-inputs.tsx";
import { SelectField } from "./select-field.tsx";
import { StockFields } from "./stock-fields.tsx";

const ENDS: readonly { readonly value: RunEnd; readonly words: string }[] = [
  { value: "square", words: "Square cut" },
  { value: "against a wall", words: "Against a wall" },
  { value: "return", words: "Return to the wall" },
];

type CornerWords = "outside" | "inside" | "inside, left scribed" | "inside, mitred";

const CORNERS: readonly { readonly value: CornerWords; readonly words: string }[] = [
  { value: "outside", words: "Outside, mitred" },
  { value: "inside", words: "Inside, right piece scribed" },
  { value: "inside, left scribed", words: "Inside, left piece scribed" },
  { value: "inside, mitred", words: "Inside, mitred" },
];

function cornerWords({ kind, joint }: RunCornerChoice): CornerWords {
  if (kind === "outside") return "outside";
  if (joint === "mitre") return "inside, mitred";
  return joint === "scribe left" ? "inside, left scribed" : "inside";
}

const JOINTS: Readonly<
  Record<CornerWords, Pick<RunCornerChoice, "kind"> & { readonly joint: CornerJoint | undefined }>
> = {
  outside: { kind: "outside", joint: undefined },
  inside: { kind: "inside", joint: undefined },
  "inside, left scribed": { kind: "inside", joint: "scribe left" },
  "inside, mitred": { kind: "inside", joint: "mitre" },
};

export function CorniceInputs() {
  const { run } = choicesOf(useShownJob());
  const { wallsMm, corners } = run;
  const walls = wallsMm.map((wallMm, index) => ({ wallMm, index, number: index + 1 }));
  const isClosed = corners.length === wallsMm.length;
  return (
    <>
      <h2>Walls, from left to right</h2>
      {isClosed ? null : (
        <SelectField
          label="Left end"
          value={run.start}
          options={ENDS}
          onChange={(end) => change("left end of the run", (job) => withRunEnd(job, "start", end))}
        />
      )}
      {walls.map(({ wallMm, index, number }) => (
        <Wall
          key={number}
          index={index}
          wallMm={wallMm}
          corner={corners[index]}
          isOnly={walls.length === 1}
        />
      ))}
      {isClosed ? null : (
        <SelectField
          label="Right end"
          value={run.end}
          options={ENDS}
          onChange={(end) => change("right end of the run", (job) => withRunEnd(job, "end", end))}
        />
      )}
      <div className="tools">
        <Button className="button" onPress={() => change("a wall more", withWallAdded)}>
          Another wall
        </Button>
        <Button
          className="button"
          isDisabled={!isClosed && wallsMm.length < 3}
          onPress={() =>
            change(isClosed ? "run opened" : "run closed", (job) =>
              withFit(job, "run", {
                wallsMm: [...wallsMm],
                corners: (isClosed
                  ? corners.slice(0, -1)
                  : [...corners, { cornerDeg: 90, kind: "outside" as const, joint: undefined }]
                ).map(({ cornerDeg, kind, joint }) =>
                  joint === undefined ? { cornerDeg, kind } : { cornerDeg, kind, joint },
                ),
              }),
            )
          }
        >
          {isClosed ? "Open the run" : "Close the run"}
        </Button>
      </div>
      <SpringFields />
      <StockFields />
    </>
  );
}

function Wall({
  index,
  wallMm,
  corner,
  isOnly,
}: {
  readonly index: number;
  readonly wallMm: number;
  readonly corner: RunCornerChoice | undefined;
  readonly isOnly: boolean;
}) {
  const number = index + 1;
  return (
    <>
      <div className="fit-wall">
        <LengthField
          label={`Wall ${number}`}
          valueMm={wallMm}
          onChange={(lengthMm) => change(`length of wall ${number}`, (job) => withWall(job, index, lengthMm))}
        />
        <Button
          className="button"
          isDisabled={isOnly}
          aria-label={`Take wall ${number} away`}
          onPress={() => change(`wall ${number} away`, (job) => withWallRemoved(job, index))}
        >
          Away
        </Button>
      </div>
      {corner === undefined ? null : (
        <div className="fit-corner">
          <SelectField
            label={`Corner after wall ${number}`}
            value={cornerWords(corner)}
            options={CORNERS}
            onChange={(words) =>
              change(`corner after wall ${number}`, (job) => withCorner(job, index, JOINTS[words]))
            }
          />
          <FigureField
            label="Its angle"
            unit="°"
            value={corner.cornerDeg}
            least={30}
            most={175}
            onChange={(cornerDeg) =>
              change(`angle after wall ${number}`, (job) => withCorner(job, index, { cornerDeg }))
            }
          />
        </div>
      )}
    </>
  );
}
