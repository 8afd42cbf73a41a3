/** How the moulding hangs: level or upright, which edge comes first, how far its back leans from the wall. */
import type { Hanging } from "mouldwright/light";
import { Button } from "react-aria-components";
import { change } from "../../bench/job-on-bench.ts";
import { Choice } from "../../common/choice.tsx";
import { HelpWord } from "../../common/help-word.tsx";
import { LightSlider } from "./light-slider.tsx";
import { withHanging } from "./look.ts";

export interface HangingControlsProps {
  readonly hanging: Hanging;
  /** Whether the section's own bevels say how it hangs. */
  readonly isOwn: boolean;
  readonly onDrag: (hanging: Hanging | null) => void;
}

const RUNS = [
  { value: "level", words: "Level" },
  { value: "upright", words: "Upright" },
] as const;

export function HangingControls({ hanging, isOwn, onDrag }: HangingControlsProps) {
  const { run, firstEdge, springFromWallDeg } = hanging;
  const isLevel = run === "level";
  const edges = [
    { value: "gauge edge", words: isLevel ? "Gauge edge up" : "Gauge edge left" },
    { value: "far edge", words: isLevel ? "Far edge up" : "Far edge left" },
  ] as const;
  const keep = (what: string, next: Hanging): void => {
    onDrag(null);
    change(what, (job) => withHanging(job, next));
  };
  return (
    <section className="panel light-panel" aria-label="How it hangs">
      <h2>How it hangs</h2>
      <div className="tools">
        <Choice
          label="Run"
          value={run}
          options={RUNS}
          onChange={(next) =>
            keep(`${next} run`, {
              ...hanging,
              run: next,
              // A spring is between wall and ceiling: an upright run stands flat.
              springFromWallDeg: next === "upright" ? 0 : springFromWallDeg,
            })
          }
        />
        <Choice
          label={isLevel ? "Upper edge" : "Left edge"}
          value={firstEdge}
          options={edges}
          onChange={(next) =>
            keep(`${next} ${isLevel ? "up" : "on the left"}`, { ...hanging, firstEdge: next })
          }
        />
      </div>
      {isLevel ? (
        <>
          <LightSlider
            label="Back from the wall"
            value={Math.round(springFromWallDeg)}
            least={0}
            most={90}
            step={1}
            says={(deg) => (deg === 0 ? "flat on the wall" : `${deg}°`)}
            onDrag={(deg) => onDrag({ ...hanging, springFromWallDeg: deg })}
            onLift={(deg) => keep(`back ${deg}° from the wall`, { ...hanging, springFromWallDeg: deg })}
          />
          <p className="quiet">
            {isOwn ? "The " : "Set by you. The section’s own "}
            <HelpWord word="spring">spring</HelpWord>
            {isOwn
              ? " is taken from the section’s back bevels; flat where it has none."
              : " comes from its back bevels."}
          </p>
        </>
      ) : null}
      {isOwn ? null : (
        <Button
          className="button"
          onPress={() => {
            onDrag(null);
            change("hangs as its bevels say", (job) => withHanging(job, null));
          }}
        >
          As the bevels say
        </Button>
      )}
    </section>
  );
}
