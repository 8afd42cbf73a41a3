/** The moisture content that wood comes to in air of a temperature and humidity. */
import { cataloguedTrouble, fine, type Outcome, refused, type TroubleCode } from "../measure/index.ts";

export type Temperature = { readonly celsius: number } | { readonly fahrenheit: number };

export interface Moisture {
  readonly moisturePercent: number;
  /** The other fit at the same temperature: it shows how far the formula can be trusted. */
  readonly otherFitPercent: number;
  readonly fit: "Celsius" | "Fahrenheit";
  readonly temperatureC: number;
  readonly humidityPercent: number;
  readonly convention: {
    readonly moisture: "water in the wood as a percentage of its ovendry weight";
    readonly humidity: "relative humidity, percent";
  };
  readonly source: string;
}

/** Below it the fits leave the physics (a constant turns negative at about −37 °C), so nothing is said. */
const COLDEST_C = -30;
const HOTTEST_C = 120;
/** What the printed table was read and compared over; outside it the figure is only likely. */
const TABLE_COLDEST_C = -1.2;
const TABLE_HOTTEST_C = 93.4;
const TABLE_DRIEST_PERCENT = 5;
const TABLE_WETTEST_PERCENT = 95;

const SOURCE =
  "Form: Wood Handbook, FPL-GTR-190 (2010), eq. 4-5, p. 4-3; constants from memory, confirmed against 342 values of its Table 4-2 within 0.06";

interface Fit {
  readonly w: number;
  readonly k: number;
  readonly k1: number;
  readonly k2: number;
}

/**
 * Equilibrium moisture content, percent, from the temperature (°C or °F, the fit of that scale is used) and the
 * relative humidity, percent.
 *
 * Domain: −30 to 120 °C, 0 to 100 %; a warning outside the printed table's −1 to 93 °C and 5 to 95 %.
 * Accuracy: within 0.06 (Celsius) and 0.07 (Fahrenheit) of the printed table; the two fits differ by up to 0.02.
 * Source: Wood Handbook eq. 4-5 (see `source` of the result).
 */
export function equilibriumMoisture(
  temperature: Temperature,
  humidityPercent: number,
): Outcome<Moisture, TroubleCode> {
  const isCelsius = "celsius" in temperature;
  const temperatureC = isCelsius ? temperature.celsius : ((temperature.fahrenheit - 32) * 5) / 9;
  if (!(temperatureC >= COLDEST_C && temperatureC <= HOTTEST_C)) {
    const facts = { temperatureC, leastC: COLDEST_C, mostC: HOTTEST_C };
    return refused(cataloguedTrouble("moisture-temperature", "temperature", facts));
  }
  if (!(humidityPercent >= 0 && humidityPercent <= 100)) {
    return refused(cataloguedTrouble("moisture-humidity", "humidity", { humidityPercent }));
  }
  const temperatureF = isCelsius ? (temperatureC * 9) / 5 + 32 : temperature.fahrenheit;
  const byCelsius = moistureOf(celsiusFit(temperatureC), humidityPercent);
  const byFahrenheit = moistureOf(fahrenheitFit(temperatureF), humidityPercent);
  const isInTable =
    temperatureC >= TABLE_COLDEST_C &&
    temperatureC <= TABLE_HOTTEST_C &&
    humidityPercent >= TABLE_DRIEST_PERCENT &&
    humidityPercent <= TABLE_WETTEST_PERCENT;
  const warnings = isInTable
    ? []
    : [cataloguedTrouble("moisture-outside-table", "", { temperatureC, humidityPercent })];
  return fine<Moisture, TroubleCode>(
    {
      moisturePercent: isCelsius ? byCelsius : byFahrenheit,
      otherFitPercent: isCelsius ? byFahrenheit : byCelsius,
      fit: isCelsius ? "Celsius" : "Fahrenheit",
      temperatureC,
      humidityPercent,
      convention: {
        moisture: "water in the wood as a percentage of its ovendry weight",
        humidity: "relative humidity, percent",
      },
      source: SOURCE,
    },
    warnings,
  );
}

/** W, K, K1 and K2 as polynomials of the temperature in °C. */
function celsiusFit(t: number): Fit {
  return {
    w: 349 + 1.29 * t + 0.0135 * t * t,
    k: 0.805 + 0.000736 * t - 0.00000273 * t * t,
    k1: 6.27 - 0.00938 * t - 0.000303 * t * t,
    k2: 1.91 + 0.0407 * t - 0.000293 * t * t,
  };
}

/** The same in °F: a fit of its own, not the other one converted. */
function fahrenheitFit(t: number): Fit {
  return {
    w: 330 + 0.452 * t + 0.00415 * t * t,
    k: 0.791 + 0.000463 * t - 0.000000844 * t * t,
    k1: 6.34 + 0.000775 * t - 0.0000935 * t * t,
    k2: 1.09 + 0.0284 * t - 0.0000904 * t * t,
  };
}

/** EMC = 1800/W · [Kh/(1 − Kh) + (K1 K h + 2 K1 K2 K² h²) / (1 + K1 K h + K1 K2 K² h²)], h as a fraction. */
function moistureOf({ w, k, k1, k2 }: Fit, humidityPercent: number): number {
  const kh = (k * humidityPercent) / 100;
  const first = k1 * kh;
  const second = k1 * k2 * kh * kh;
  return (1800 / w) * (kh / (1 - kh) + (first + 2 * second) / (1 + first + second));
}
