/** A slider with its value in words; what is dragged is shown at once and kept when the finger lifts. */
import { Label, Slider, SliderOutput, SliderThumb, SliderTrack } from "react-aria-components";

export interface LightSliderProps {
  readonly label: string;
  readonly value: number;
  readonly least: number;
  readonly most: number;
  readonly step: number;
  readonly says: (value: number) => string;
  readonly onDrag: (value: number) => void;
  readonly onLift: (value: number) => void;
}

export function LightSlider({ label, value, least, most, step, says, onDrag, onLift }: LightSliderProps) {
  const one = (values: number | number[]): number => (Array.isArray(values) ? (values[0] ?? value) : values);
  return (
    <Slider
      className="light-slider"
      value={value}
      minValue={least}
      maxValue={most}
      step={step}
      onChange={(values) => onDrag(one(values))}
      onChangeEnd={(values) => onLift(one(values))}
    >
      <div className="light-slider-head">
        <Label>{label}</Label>
        <SliderOutput className="figures">{says(value)}</SliderOutput>
      </div>
      <SliderTrack className="light-track">
        <SliderThumb className="light-thumb" aria-valuetext={says(value)} />
      </SliderTrack>
    </Slider>
  );
}
