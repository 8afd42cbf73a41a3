/** What if: a change of the way of working is planned beside the plan there is, and then taken or left. */
import type { Plan } from "mouldwright/cutting";
import { type Job, WAY_LIMITS } from "mouldwright/job";
import { cataloguedTrouble, type Trouble } from "mouldwright/measure";
import { titleOf } from "mouldwright/sheets";
import { type ReactNode, useState } from "react";
import { Button } from "react-aria-components";
import { change, useBench } from "../../bench/job-on-bench.ts";
import { Drawer } from "../../common/drawer.tsx";
import { FigureField } from "../../common/figure-field.tsx";
import { keepPlan } from "../../planner/plan-on-bench.ts";
import { useTrial } from "../../planner/trial.ts";
import type { Rule } from "./cut-words.ts";
import { TrialView } from "./trial-view.tsx";
import { jobWith, planesOf, type Saving, type WayName, type Wish, wishWords } from "./what-if.ts";

const WAYS: readonly { readonly way: WayName | null; readonly words: string }[] = [
  { way: "flat", words: "Lying flat" },
  { way: "bevelled", words: "Bevelled first" },
  { way: "canted", words: "In a canted jaw" },
  { way: null, words: "Whichever is best" },
];
const SAVINGS: readonly { readonly on: Saving | null; readonly words: string }[] = [
  { on: "fewer planes", words: "Fewer planes" },
  { on: "fewer settings", words: "Fewer settings" },
  { on: "fewer strokes", words: "Fewer strokes" },
  { on: null, words: "No preference" },
];

export interface WhatIfDrawerProps {
  readonly plan: Plan;
  readonly rule: Rule;
  readonly onClose: () => void;
}

export function WhatIfDrawer({ plan, rule, onClose }: WhatIfDrawerProps) {
  const job = useBench((bench) => bench.job);
  const { trial, ask, leave } = useTrial();
  const [wish, setWish] = useState<Wish | null>(null);
  const wishFor = (next: Wish): void => {
    setWish(next);
    ask(jobWith(job, plan, next));
  };
  const take = (): void => {
    if (trial.kind !== "planned" || wish === null) return;
    keepPlan(trial.job, trial.computed, trial.warnings);
    change(wishWords(wish), () => trial.job);
    onClose();
  };
  return (
    <Drawer title="What if…" isOpen onClose={onClose}>
      <p className="quiet">Each is planned beside the plan there is. Nothing changes until you take it.</p>
      <TrialView
        trial={trial}
        before={plan}
        words={wish === null ? "" : wishWords(wish)}
        isRefusal={isSwapRefusal}
        remarks={(tried) => wayNotTaken(wish, tried)}
        onTake={take}
        onLeave={leave}
      />
      <Wishes plan={plan} job={job} rule={rule} wishFor={wishFor} />
    </Drawer>
  );
}

function isSwapRefusal({ code }: Trouble): boolean {
  return code === "swap-refused" || code === "swap-unproven";
}

/** Asked for one way, the planner takes another where that one does not exist for the section. */
function wayNotTaken(wish: Wish | null, tried: Plan): readonly Trouble[] {
  if (wish?.kind !== "way" || wish.way === null || tried.way === wish.way) return [];
  return [cataloguedTrouble("plan-way-not-taken", "", { asked: wish.way, taken: tried.way })];
}

interface WishesProps {
  readonly plan: Plan;
  readonly job: Job;
  readonly rule: Rule;
  readonly wishFor: (wish: Wish) => void;
}

function Wishes({ plan, job, rule, wishFor }: WishesProps) {
  const leftOut = job.way?.without ?? [];
  return (
    <div className="wishes">
      <Group title="Leave a plane out">
        {planesOf(plan).map(({ id, name }) => (
          <Button key={id} className="button" onPress={() => wishFor({ kind: "without", planeId: id, name })}>
            Without the {name}
          </Button>
        ))}
      </Group>
      {leftOut.length === 0 ? null : (
        <Group title="Left out now">
          {leftOut.map((word) => (
            <Button
              key={word}
              className="button"
              onPress={() => wishFor({ kind: "with", planeId: word, name: nameOnShelf(job, word) })}
            >
              With the {nameOnShelf(job, word)} again
            </Button>
          ))}
        </Group>
      )}
      <Group title="How the stick lies">
        {WAYS.map(({ way, words }) => (
          <Button key={words} className="button" onPress={() => wishFor({ kind: "way", way })}>
            {words}
          </Button>
        ))}
      </Group>
      <Group title="Save on">
        {SAVINGS.map(({ on, words }) => (
          <Button key={words} className="button" onPress={() => wishFor({ kind: "save", on })}>
            {words}
          </Button>
        ))}
      </Group>
      <LeanWish job={job} wishFor={wishFor} />
      {plan.cuts.length < 2 ? null : <SwapWish plan={plan} job={job} rule={rule} wishFor={wishFor} />}
    </div>
  );
}

function LeanWish({ job, wishFor }: Pick<WishesProps, "job" | "wishFor">) {
  const most = WAY_LIMITS.greatestLeanDeg;
  const [greatestDeg, setGreatestDeg] = useState(job.way?.greatestLeanDeg ?? most);
  return (
    <Group title="Greatest lean in the hand">
      <FigureField
        label="Leaned at most"
        value={greatestDeg}
        unit="°"
        least={0}
        most={most}
        onChange={setGreatestDeg}
      />
      <Button className="button" onPress={() => wishFor({ kind: "lean", greatestDeg })}>
        Try this lean
      </Button>
    </Group>
  );
}

function SwapWish({ plan, job, rule, wishFor }: WishesProps) {
  const [first, setFirst] = useState(1);
  const [second, setSecond] = useState(2);
  const isSame = first === second;
  return (
    <Group title="Swap two cuts">
      <CutChoice label="This cut" plan={plan} rule={rule} value={first} onChange={setFirst} />
      <CutChoice label="and this one" plan={plan} rule={rule} value={second} onChange={setSecond} />
      <Button className="button" isDisabled={isSame} onPress={() => wishFor({ kind: "swap", first, second })}>
        Try them swapped
      </Button>
      {isSame ? <p className="quiet">Choose two different cuts.</p> : null}
      {(job.way?.swaps ?? []).length === 0 ? null : (
        <Button className="button" onPress={() => wishFor({ kind: "unswap" })}>
          Order as planned, nothing swapped
        </Button>
      )}
    </Group>
  );
}

export interface CutChoiceProps {
  readonly label: string;
  readonly plan: Plan;
  readonly rule: Rule;
  readonly value: number;
  readonly onChange: (number: number) => void;
}

export function CutChoice({ label, plan, rule, value, onChange }: CutChoiceProps) {
  return (
    <label className="field">
      <span>{label}</span>
      <select value={value} onChange={(event) => onChange(Number(event.target.value))}>
        {plan.cuts.map((cut) => (
          <option key={cut.number} value={cut.number}>
            {cut.number}: {titleOf(cut, rule.unit)}
          </option>
        ))}
      </select>
    </label>
  );
}

function Group({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  return (
    <section className="wish-group">
      <h3>{title}</h3>
      <div className="tools">{children}</div>
    </section>
  );
}

function nameOnShelf(job: Job, word: string): string {
  if (job.shelf === undefined || "file" in job.shelf) return word;
  return job.shelf.planes.find(({ id }) => id === word)?.name ?? word;
}
