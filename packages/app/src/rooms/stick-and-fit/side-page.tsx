/** A moulding along a solid side of a case: how far the side moves under it, and how long the slots must be. */
import { Button } from "react-aria-components";
import { change, useShownJob } from "../../bench/job-on-bench.ts";
import { DrawingView } from "../../common/drawing-view.tsx";
import { LengthField } from "../../common/length-field.tsx";
import { useLengthWords } from "../../common/length-words.ts";
import { choicesOf, type Fit, withFit } from "../../fitting/fit-choices.ts";
import type { SideAnswer } from "../../fitting/side-answer.ts";
import { Figure, Figures } from "./figures.tsx";
import { FitLayout } from "./fit-layout.tsx";
import { Cautions, Notes } from "./fit-notes.tsx";
import { TimberFields } from "./stick-inputs.tsx";

export function SidePage() {
  return (
    <FitLayout
      page="side"
      inputs={<SideInputs />}
      first={(answer) => <Slides answer={answer} />}
      more={(answer) => <Notes warnings={answer.warnings} assumed={answer.assumed} />}
    />
  );
}

function Slides({ answer: { side, picture, cautions } }: { readonly answer: SideAnswer }) {
  const { length } = useLengthWords();
  if (side === null) {
    return (
      <p className="panel">
        Here stands how far a solid side moves under its moulding, and how long the screws’ slots must be.
        Choose the side’s timber to begin.
      </p>
    );
  }
  return (
    <>
      <Figures>
        <Figure name="The side moves">{length(side.travelMm)}</Figure>
        <Figure name="Cut short at the back">{length(side.shortAtBackMm)}</Figure>
      </Figures>
      <p className="fit-says">
        Fast at the front: glue the mitre and the first hand’s breadth behind it, and screw there. Behind that
        no glue: screws in slots, so that the moulding slides.
      </p>
      {side.screws.length === 0 ? (
        <p>No screw is named: put one in, and its slot stands here.</p>
      ) : (
        <table className="fit-table figures">
          <thead>
            <tr>
              <th scope="col">Screw, from the front</th>
              <th scope="col">Slot at least</th>
            </tr>
          </thead>
          <tbody>
            {side.screws.map(({ fromFrontMm, slotMm }, index) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: two screws may be named at one place.
              <tr key={index}>
                <td>{length(fromFrontMm)}</td>
                <td>{length(slotMm)} long</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {picture === null ? null : (
        <div className="fit-picture">
          <DrawingView drawing={picture} />
        </div>
      )}
      <Cautions cautions={cautions} />
    </>
  );
}

function SideInputs() {
  const { side } = choicesOf(useShownJob());
  const set = (what: string, part: Partial<NonNullable<Fit["side"]>>): void =>
    change(what, (job) => withFit(job, "side", part));
  const { screwsMm, depthMm } = side;
  return (
    <>
      <TimberFields />
      <div className="fit-fields">
        <LengthField
          label="Side, front to back"
          valueMm={depthMm}
          leastMm={20}
          mostMm={2000}
          onChange={(next) => set("depth of the side", { depthMm: next })}
        />
        <LengthField
          label="Screw’s shank"
          valueMm={side.screwMm}
          leastMm={1}
          mostMm={12}
          onChange={(screwMm) => set("screw’s shank", { screwMm })}
        />
      </div>
      <fieldset className="stock">
        <legend>Screws, from the front mitre</legend>
        {screwsMm.map((placeMm, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: screws have no name of their own; their place tells them apart.
          <div key={index} className="fit-wall">
            <LengthField
              label={`Screw ${index + 1}`}
              valueMm={placeMm}
              leastMm={0}
              mostMm={depthMm}
              onChange={(next) =>
                set(`screw ${index + 1}`, {
                  screwsMm: screwsMm.map((own, at) => (at === index ? next : own)),
                })
              }
            />
            <Button
              className="button"
              aria-label={`Take screw ${index + 1} away`}
              onPress={() => set("a screw less", { screwsMm: screwsMm.filter((_, at) => at !== index) })}
            >
              Away
            </Button>
          </div>
        ))}
        <div className="tools">
          <Button
            className="button"
            onPress={() =>
              set("a screw more", {
                screwsMm: [...screwsMm, Math.min(depthMm, (screwsMm.at(-1) ?? 0) + 120)],
              })
            }
          >
            A screw more
          </Button>
        </div>
      </fieldset>
    </>
  );
}
