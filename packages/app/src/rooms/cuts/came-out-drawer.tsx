/** "It came out so": what was measured on the test piece or part-way, and the rest planned again from there. */
import type { Plan } from "mouldwright/cutting";
import type { Job, Stage } from "mouldwright/job";
import { cataloguedTrouble, exceedsMm, type Trouble } from "mouldwright/measure";
import { useState } from "react";
import { Button } from "react-aria-components";
import { change, useBench } from "../../bench/job-on-bench.ts";
import { Drawer } from "../../common/drawer.tsx";
import { LengthField } from "../../common/length-field.tsx";
import { TroubleWords } from "../../common/trouble-words.tsx";
import { keepPlan } from "../../planner/plan-on-bench.ts";
import { useTrial } from "../../planner/trial.ts";
import {
  type CameOut,
  type CutOff,
  cutsBehind,
  cutsMeasured,
  goingOn,
  type MeasuredPlane,
  type PlaneSizes,
  planesUsed,
  stageOf,
  takenBack,
} from "./came-out.ts";
import type { Rule } from "./cut-words.ts";
import { TrialView } from "./trial-view.tsx";
import { CutChoice } from "./what-if-drawer.tsx";

/** A cut further out than this was another cut; the reader of measurements refuses it, mm. */
const FARTHEST_MM = 10;

export interface CameOutDrawerProps {
  readonly plan: Plan;
  readonly rule: Rule;
  /** The cut that was made last, as far as is known. */
  readonly lastMade: number;
  readonly onClose: () => void;
}

export function CameOutDrawer({ plan, rule, lastMade, onClose }: CameOutDrawerProps) {
  const job = useBench((bench) => bench.job);
  const { trial, ask, leave } = useTrial();
  const [last, setLast] = useState(lastMade);
  const [planes, setPlanes] = useState<CameOut["planes"]>({});
  const [cuts, setCuts] = useState<CameOut["cuts"]>({});
  const [troubles, setTroubles] = useState<readonly Trouble[]>([]);
  const [stage, setStage] = useState<Stage | null>(null);
  const after = plan.cuts.findIndex(({ number }) => number === last) + 1;
  const words = `it came out so after cut ${last}`;
  const planOn = (): void => {
    const told = stageOf(plan, { after, planes, cuts });
    leave();
    if (!told.ok) {
      setTroubles([told.trouble, ...(told.more ?? [])]);
      return;
    }
    setTroubles([]);
    setStage(told.value);
    ask(goingOn(job, told.value));
  };
  const take = (): void => {
    if (trial.kind !== "planned" || stage === null) return;
    keepPlan(trial.job, trial.computed, trial.warnings);
    change(words, () => trial.job);
    onClose();
  };
  return (
    <Drawer title="It came out so" isOpen onClose={onClose}>
      <p className="quiet">
        Lay the test piece on the template, measure what the planes left, and type in only what differs. The
        rest is planned again from there; what is made stays in the list as made.
      </p>
      <TroubleWords troubles={troubles} />
      <TrialView
        trial={trial}
        before={planFrom(plan, after)}
        words={words}
        isRefusal={() => false}
        remarks={standsUnder}
        onTake={take}
        onLeave={leave}
      />
      <section className="wish-group">
        <CutChoice label="Made up to and with cut" plan={plan} rule={rule} value={last} onChange={setLast} />
      </section>
      <Planes planes={planesUsed(plan, after)} said={planes} onChange={setPlanes} />
      <Places cuts={cutsMeasured(plan, after)} said={cuts} onChange={setCuts} />
      <div className="tools wish-group">
        <Button className="button button-main" onPress={planOn}>
          Plan the rest from here
        </Button>
      </div>
      <TakeBack job={job} onTaken={onClose} />
    </Drawer>
  );
}

/** What is left to do of the plan there is: what a plan of the rest is compared with. */
function planFrom(plan: Plan, after: number): Plan {
  const { time: _, ...rest } = plan;
  return { ...rest, cuts: plan.cuts.slice(after) };
}

/** Wood that is gone cannot be put back: told, with how deep. */
function standsUnder({ finish, tolerance }: Plan): readonly Trouble[] {
  if (!exceedsMm(finish.under, tolerance)) return [];
  return [cataloguedTrouble("plan-stands-under", "", { underMm: finish.under, toleranceMm: tolerance })];
}

interface PlanesProps {
  readonly planes: readonly MeasuredPlane[];
  readonly said: CameOut["planes"];
  readonly onChange: (said: CameOut["planes"]) => void;
}

function Planes({ planes, said, onChange }: PlanesProps) {
  if (planes.length === 0) return null;
  const say = (id: string, sizes: PlaneSizes): void => onChange({ ...said, [id]: { ...said[id], ...sizes } });
  return (
    <section className="wish-group">
      <h3>Planes as they cut</h3>
      {planes.map(({ id, name, widthMm, radiusMm }) => (
        <fieldset key={id} className="measured">
          <legend>{name}</legend>
          {widthMm === null ? null : (
            <LengthField
              label="Width it cuts"
              valueMm={said[id]?.widthMm ?? widthMm}
              onChange={(valueMm) => say(id, { widthMm: valueMm })}
            />
          )}
          {radiusMm === null ? null : (
            <LengthField
              label="Radius it leaves"
              valueMm={said[id]?.radiusMm ?? radiusMm}
              onChange={(valueMm) => say(id, { radiusMm: valueMm })}
            />
          )}
        </fieldset>
      ))}
    </section>
  );
}

interface PlacesProps {
  readonly cuts: readonly { readonly number: number; readonly name: string }[];
  readonly said: CameOut["cuts"];
  readonly onChange: (said: CameOut["cuts"]) => void;
}

function Places({ cuts, said, onChange }: PlacesProps) {
  if (cuts.length === 0) return null;
  const say = (number: number, off: CutOff): void =>
    onChange({ ...said, [number]: { ...said[String(number)], ...off } });
  return (
    <section className="wish-group">
      <h3>Cuts out of their places</h3>
      <p className="quiet">
        As you see the stick’s end: across to the right, deeper into the wood. With a minus sign the other
        way.
      </p>
      {cuts.map(({ number, name }) => (
        <fieldset key={number} className="measured">
          <legend>
            Cut {number}: {name}
          </legend>
          <LengthField
            label="Out across"
            isSigned
            leastMm={-FARTHEST_MM}
            mostMm={FARTHEST_MM}
            valueMm={said[String(number)]?.acrossMm ?? 0}
            onChange={(valueMm) => say(number, { acrossMm: valueMm })}
          />
          <LengthField
            label="Deeper"
            isSigned
            leastMm={-FARTHEST_MM}
            mostMm={FARTHEST_MM}
            valueMm={said[String(number)]?.deeperMm ?? 0}
            onChange={(valueMm) => say(number, { deeperMm: valueMm })}
          />
        </fieldset>
      ))}
    </section>
  );
}

function TakeBack({ job, onTaken }: { readonly job: Job; readonly onTaken: () => void }) {
  const behind = cutsBehind(job);
  if (behind === 0) return null;
  return (
    <section className="wish-group">
      <h3>Told before</h3>
      <p>
        {behind} {behind === 1 ? "cut is" : "cuts are"} made and behind this plan. Take back what was told
        last, and the plan before is made again.
      </p>
      <Button
        className="button"
        onPress={() => {
          change("what came out taken back", takenBack);
          onTaken();
        }}
      >
        Take it back
      </Button>
    </section>
  );
}
