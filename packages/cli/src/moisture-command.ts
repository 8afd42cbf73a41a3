import { drawMoisture } from "mouldwright/sheets";
import { equilibriumMoisture } from "mouldwright/timber";
import type { OptionKinds } from "./arguments.ts";
import { type Command, refuse, troublesOfRefusal } from "./command.ts";
import { deliver, FIT_OPTIONS } from "./fit-answer.ts";
import { firstRefusal, missing, nameTooMany, readPercent, readTemperature } from "./fit-options.ts";

export const MOISTURE_OPTIONS: OptionKinds = {
  temperature: { value: true, sample: "--temperature=-5" },
  humidity: { value: true, sample: "--humidity 50" },
  ...FIT_OPTIONS,
};

/** `mouldwright moisture --temperature 21 --humidity 50`: what wood comes to in this air. */
export async function moistureCommand(command: Command): Promise<number> {
  const { given } = command;
  const unit = command.askedUnit ?? "mm";
  const temperature = readTemperature(given, "temperature");
  const humidity = readPercent(given, "humidity");
  const wrong = nameTooMany(given) ?? firstRefusal([temperature, humidity]);
  const refusal = wrong ?? null;
  if (refusal !== null) return refuse(command, { file: "", troubles: troublesOfRefusal(refusal) });
  if (!temperature.ok || temperature.value === undefined) {
    return refuse(command, { file: "", troubles: troublesOfRefusal(missing("temperature", "21")) });
  }
  if (!humidity.ok || humidity.value === undefined) {
    return refuse(command, { file: "", troubles: troublesOfRefusal(missing("humidity", "50")) });
  }
  const answer = equilibriumMoisture(temperature.value, humidity.value);
  if (!answer.ok) return refuse(command, { file: "", troubles: troublesOfRefusal(answer) });
  const { moisturePercent, otherFitPercent, fit, temperatureC, humidityPercent, convention, source } =
    answer.value;
  const other = fit === "Celsius" ? "Fahrenheit" : "Celsius";
  return deliver(command, {
    unit,
    file: "",
    numbers: { temperatureC, humidityPercent, moisturePercent, otherFitPercent, fit, convention, source },
    lines: [
      "Moisture is the water in the wood as a share of its ovendry weight; humidity is that of the air.",
      "",
      `At ${tenths(temperatureC)} °C (${tenths((temperatureC * 9) / 5 + 32)} °F) and ${tenths(humidityPercent)} % wood comes to ${tenths(moisturePercent)} % moisture.`,
      "",
      `The ${other} form of the formula gives ${tenths(otherFitPercent)} %. ${source}.`,
      "A stick takes weeks to come to it, a thick one months; a meter says where it stands now.",
    ],
    warnings: answer.warnings,
    assumed: [],
    cautions: [],
    drawing: () => drawMoisture(answer.value, { unit }),
  });
}

function tenths(value: number): string {
  return String(Number(value.toFixed(1))).replace("-", "\u2212");
}
