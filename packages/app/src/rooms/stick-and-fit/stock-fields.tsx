/** The sticks that frame and cornice are cut from, and what the saw takes. */
import type { StickAtHand } from "mouldwright/making";
import { Button } from "react-aria-components";
import { change, useShownJob } from "../../bench/job-on-bench.ts";
import { FigureField } from "../../common/figure-field.tsx";
import { LengthField } from "../../common/length-field.tsx";
import { choicesOf, withFit, withStock } from "../../fitting/fit-choices.ts";

export function StockFields() {
  const { stock, isStockSaid, sawing } = choicesOf(useShownJob());
  const set = (what: string, sticks: readonly StickAtHand[]): void =>
    change(what, (job) => withStock(job, sticks));
  const replace = (index: number, part: Partial<StickAtHand>): void =>
    set(
      "sticks to cut from",
      stock.map((own, at) => (at === index ? { ...own, ...part } : own)),
    );
  return (
    <fieldset className="stock">
      <legend>Sticks to cut from</legend>
      {stock.map((stick, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: sticks have no name of their own; their place is what tells them apart.
        <div key={index} className="fit-wall">
          <div className="fit-fields">
            <LengthField
              label={stock.length === 1 ? "Length of a stick" : `Length, stick ${index + 1}`}
              valueMm={stick.lengthMm}
              leastMm={100}
              mostMm={100_000}
              onChange={(lengthMm) => replace(index, { lengthMm })}
            />
            {isStockSaid ? (
              <FigureField
                label="How many"
                unit=""
                value={stick.count ?? 1}
                least={1}
                most={100}
                isWhole
                onChange={(count) => replace(index, { count })}
              />
            ) : null}
          </div>
          {isStockSaid ? (
            <Button
              className="button"
              aria-label={`Take stick ${index + 1} away`}
              onPress={() =>
                set(
                  "a stick less",
                  stock.filter((_, at) => at !== index),
                )
              }
            >
              Away
            </Button>
          ) : null}
        </div>
      ))}
      <p className="field-note">
        {isStockSaid ? "Only these are cut from." : "As many as are needed of this length."}
      </p>
      <div className="tools">
        <Button
          className="button"
          onPress={() =>
            set(
              "a stick more",
              isStockSaid
                ? [...stock, { lengthMm: 2400, count: 1 }]
                : [{ lengthMm: stock[0]?.lengthMm ?? 2400, count: 1 }],
            )
          }
        >
          {isStockSaid ? "Another length" : "I have these sticks…"}
        </Button>
      </div>
      <div className="fit-fields">
        <LengthField
          label="Saw cut"
          valueMm={sawing.kerfMm}
          mostMm={20}
          onChange={(kerfMm) =>
            change("width of the saw cut", (job) => withFit(job, "allowances", { kerfMm }))
          }
        />
        <LengthField
          label="Trim at each end"
          valueMm={sawing.trimMm}
          mostMm={100}
          onChange={(trimMm) => change("trim", (job) => withFit(job, "allowances", { trimMm }))}
        />
        <LengthField
          label="Lost at stick’s ends"
          valueMm={sawing.planingMm}
          mostMm={1000}
          onChange={(planingMm) => change("ends lost", (job) => withFit(job, "allowances", { planingMm }))}
        />
      </div>
    </fieldset>
  );
}
