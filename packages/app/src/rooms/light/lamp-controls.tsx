/** Where the lamp stands. */
import type { Lamp } from "mouldwright/light";
import { Button } from "react-aria-components";
import { change } from "../../bench/job-on-bench.ts";
import { LightSlider } from "./light-slider.tsx";
import { isPreset, LAMP_PRESETS, LAMP_RANGE_DEG, withLamp } from "./look.ts";
import { ambientWords, directionWords, heightWords } from "./look-words.ts";

export interface LampControlsProps {
  readonly lamp: Lamp;
  /** The lamp while it is dragged; null when it is not. */
  readonly onDrag: (lamp: Lamp | null) => void;
}

export function LampControls({ lamp, onDrag }: LampControlsProps) {
  const keep = (next: Lamp): void => {
    onDrag(null);
    change(`lamp ${heightWords(next.heightDeg)}, ${directionWords(next.directionDeg)}`, (job) =>
      withLamp(job, next),
    );
  };
  const rounded = (lampDeg: number): number => Math.round(lampDeg);
  const height = (heightDeg: number): Lamp => ({ ...lamp, heightDeg: rounded(heightDeg) });
  const direction = (slid: number): Lamp => ({ ...lamp, directionDeg: 0 - rounded(slid) });
  const ambient = (percent: number): Lamp => ({ ...lamp, ambientRatio: rounded(percent) / 100 });
  return (
    <section className="panel light-panel" aria-label="Lamp">
      <h2 className="lamp-head">Lamp</h2>
      <LightSlider
        label="Height"
        value={lamp.heightDeg}
        least={-LAMP_RANGE_DEG}
        most={LAMP_RANGE_DEG}
        step={1}
        says={heightWords}
        onDrag={(value) => onDrag(height(value))}
        onLift={(value) => keep(height(value))}
      />
      {/* The slider's left is the viewer's left. */}
      <LightSlider
        label="Direction"
        value={0 - lamp.directionDeg}
        least={-LAMP_RANGE_DEG}
        most={LAMP_RANGE_DEG}
        step={1}
        says={(slid) => directionWords(0 - slid)}
        onDrag={(value) => onDrag(direction(value))}
        onLift={(value) => keep(direction(value))}
      />
      <LightSlider
        label="Light from the whole room"
        value={Math.round(lamp.ambientRatio * 100)}
        least={0}
        most={100}
        step={5}
        says={(percent) => ambientWords(percent / 100)}
        onDrag={(value) => onDrag(ambient(value))}
        onLift={(value) => keep(ambient(value))}
      />
      <ul className="light-presets" aria-label="Lamps to begin with">
        {LAMP_PRESETS.map((preset) => (
          <li key={preset.name}>
            <Button
              className="button"
              aria-pressed={isPreset(lamp, preset)}
              onPress={() =>
                keep({ ...lamp, heightDeg: preset.heightDeg, directionDeg: preset.directionDeg })
              }
            >
              {preset.name}
            </Button>
          </li>
        ))}
      </ul>
    </section>
  );
}
