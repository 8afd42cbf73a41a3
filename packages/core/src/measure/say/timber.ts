/** Sentences about timbers, moisture and movement. The pattern of an entry stands in `catalogue.ts`. */
import { catalogue } from "./catalogue.ts";

/** A percentage as people write it; a missing one as `?`. */
function percent(value: number): string {
  return Number.isFinite(value) ? `${Number(value.toFixed(1))} %` : "?";
}

function figure(value: number): string {
  return Number.isFinite(value) ? String(value) : "?";
}

function celsius(value: number): string {
  return Number.isFinite(value)
    ? `${Number(value.toFixed(1))} °C (${Number(((value * 9) / 5 + 32).toFixed(1))} °F)`
    : "?";
}

export const timberTroubles = catalogue({
  "timber-no-name": {
    example: {},
    sentence: () => "No timber is named.",
    hint: () => "Name one, such as black cherry or Scots pine.",
  },
  "timber-unknown": {
    example: { asked: "blak chery", nearest: ["Cherry, black", "Walnut, black"] as readonly string[] },
    sentence: (facts, write) => `There is no “${write.text(facts.asked)}” in the timber table.`,
    hint: (facts, write) =>
      `The nearest names are ${write.list(facts.nearest.map((name) => `“${name}”`))}; take one of them, or add your own timber with its shrinkage.`,
  },
  "timber-several": {
    example: { asked: "red oak", names: ["Oak, northern red", "Oak, red, commercial"] as readonly string[] },
    sentence: (facts, write) =>
      `“${write.text(facts.asked)}” can be several timbers of the table, and they do not move alike.`,
    hint: (facts, write) => `Say which: ${write.list(facts.names.map((name) => `“${name}”`))}.`,
  },
  "timber-taken-as": {
    example: { asked: "Douglas-fir", taken: "Douglas-fir, coast" },
    sentence: (facts, write) =>
      `“${write.text(facts.asked)}” was taken to be “${write.text(facts.taken)}”, the only one of the table that has the name in it.`,
    hint: () => "If another timber is meant, name it in full or add it as your own.",
  },
  "timber-genus": {
    example: { asked: "cherry", taken: "Cherry (Prunus)", others: ["Cherry, black"] as readonly string[] },
    sentence: (facts, write) =>
      `“${write.text(facts.asked)}” was taken to be “${write.text(facts.taken)}”, an average over the whole genus.`,
    hint: (facts, write) =>
      `If you know the species, name it: ${write.list(facts.others.map((name) => `“${name}”`))}.`,
  },
  "timber-is-genus": {
    example: { timber: "Beech (Fagus)" },
    sentence: (facts, write) =>
      `The figures of ${write.text(facts.timber)} are an average over several species.`,
    hint: () => "Name the species where you know it.",
  },
  "timber-from-memory": {
    example: { timber: "Teak" },
    sentence: (facts, write) =>
      `The shrinkage of ${write.text(facts.timber)} is from memory: the printed page was not seen.`,
    hint: () => "Look it up before much depends on it, and add it as your own timber if it differs.",
  },
  "timber-no-movement": {
    example: { timber: "Pine, western white" },
    sentence: (facts, write) =>
      `For ${write.text(facts.timber)} neither shrinkage nor movement is known here.`,
    hint: () => "Add it as your own timber with its shrinkage, or take a timber like it.",
  },
  "own-timber-name-taken": {
    example: { name: "Cherry, black" },
    sentence: (facts, write) => `“${write.text(facts.name)}” already stands in the timber table.`,
    hint: () => "Give your own timber another name, such as the place it came from.",
  },
  "own-timber-no-figures": {
    example: { name: "Pear, our own" },
    sentence: (facts, write) => `Nothing is said of how “${write.text(facts.name)}” moves.`,
    hint: () => "Give its shrinkage from green to ovendry, across and along the growth rings, in percent.",
  },
  "own-timber-figure": {
    example: { name: "Pear, our own", figure: "radial shrinkage in percent", value: 50, most: 20 },
    sentence: (facts, write) =>
      `The ${write.text(facts.figure)} of “${write.text(facts.name)}” is ${figure(facts.value)}; it must be more than nothing and at most ${facts.most}.`,
    hint: () => "Look at the figure and its unit again.",
  },
  "own-timber-turned": {
    example: { name: "Pear, our own" },
    sentence: (facts, write) =>
      `“${write.text(facts.name)}” is said to move more across its growth rings than along them; wood nearly always does the opposite.`,
    hint: () => "See whether the two figures have changed places.",
  },
  "moisture-temperature": {
    example: { temperatureC: 300, leastC: -30, mostC: 120 },
    sentence: (facts) =>
      `The temperature is ${celsius(facts.temperatureC)}; the formula holds from ${celsius(facts.leastC)} to ${celsius(facts.mostC)}.`,
    hint: () => "Give the temperature of the room, and look whether Celsius or Fahrenheit is meant.",
  },
  "moisture-humidity": {
    example: { humidityPercent: 140 },
    sentence: (facts) =>
      `The relative humidity is given as ${percent(facts.humidityPercent)}; air holds from 0 to 100 %.`,
    hint: () => "Read the hygrometer again: a heated room has about 30 to 50 %, a damp one 70 %.",
  },
  "moisture-outside-table": {
    example: { temperatureC: -15, humidityPercent: 60 },
    sentence: (facts) =>
      `The printed table does not reach ${celsius(facts.temperatureC)} and ${percent(facts.humidityPercent)} humidity, so the formula is unproven there.`,
    hint: () => "Take the figure as a guide, and measure the wood with a meter.",
  },
  "movement-size": {
    example: { size: "width", valueMm: -60, mostMm: 10000 },
    sentence: (facts, write) =>
      `The ${write.text(facts.size)} is ${write.length(facts.valueMm)}; it must be more than nothing and at most ${write.length(facts.mostMm)}.`,
    hint: (facts, write) => `Give the ${write.text(facts.size)} of the wood across its grain.`,
  },
  "movement-moisture": {
    example: { moisturePercent: -2 },
    sentence: (facts) =>
      `A moisture content of ${percent(facts.moisturePercent)} is not possible; ovendry wood has 0 %.`,
    hint: () => "Wood in a heated room has 6 to 9 %, in an open shed 12 to 18 %.",
  },
  "movement-above-saturation": {
    example: { moisturePercent: 45, saturationPercent: 30 },
    sentence: (facts) =>
      `The moisture content is ${percent(facts.moisturePercent)}; above ${percent(facts.saturationPercent)} wood neither shrinks nor swells.`,
    hint: (facts) =>
      `Reckon from ${percent(facts.saturationPercent)}: the wood keeps its size until it has dried to that.`,
  },
  "movement-outside-range": {
    example: {
      fromPercent: 20,
      toPercent: 8,
      leastPercent: 6,
      mostPercent: 14,
      by: "shrinkage",
    },
    sentence: (facts) =>
      `From ${percent(facts.fromPercent)} to ${percent(facts.toPercent)} is outside the ${percent(facts.leastPercent)} to ${percent(facts.mostPercent)} that the published coefficients hold for; the figure was reckoned ${facts.by === "shrinkage" ? "with the wider formula, from the whole shrinkage" : "with the coefficients all the same"}.`,
    hint: () => "Take it as a guide, and leave more room than it says.",
  },
  "caution-dust-timber": {
    example: { timber: "Redcedar, western", how: "asthma" },
    sentence: (facts, write) =>
      facts.how === "asthma"
        ? `Dust of ${write.text(facts.timber)} can bring on asthma; no timber is named for it more often.`
        : `Dust of ${write.text(facts.timber)} has been reported to make people allergic.`,
    hint: () =>
      "Extract at the tool, wear a fitted mask, and stop when the chest tightens; local exposure limits and licensed practice decide.",
  },
  "movement-averages": {
    example: { timber: "Cherry, black" },
    sentence: (facts, write) =>
      `The figures of ${write.text(facts.timber)} are averages; one board may move a quarter more or less.`,
    hint: () => "Leave room for more, above all where the growth rings run aslant.",
  },
});
