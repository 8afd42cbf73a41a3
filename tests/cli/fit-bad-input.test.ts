/** Bad input of the fitting commands: one clear refusal that names the value and the remedy, 2, nothing written. */
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type Bench, newBench, runHere } from "./run.ts";

const CORNICE = fileURLToPath(new URL("../../examples/cornice.json", import.meta.url));
const RUN = fileURLToPath(new URL("../../examples/fit/cabinet-cornice.json", import.meta.url));

const LENGTHS = {
  format: "mouldwright/lengths",
  version: 1,
  name: "Trial",
  runs: [{ name: "Rail", pieces: [{ lengthMm: 2500 }] }],
  sticks: [{ lengthMm: 2400 }],
};

let bench: Bench;
beforeAll(async () => {
  bench = await newBench();
  const put = (name: string, value: object): Promise<string> => bench.put(name, JSON.stringify(value));
  await put("long.json", LENGTHS);
  await put("slip.json", { ...LENGTHS, sticks: [{ lenghtMm: 2400 }] });
  await put("negative.json", { ...LENGTHS, runs: [{ name: "Rail", pieces: [{ lengthMm: -2 }] }] });
  await put("newer.json", { ...LENGTHS, version: 9 });
  await put("half.json", { format: "mouldwright/cornice", version: 1, name: "x", wallsMm: [1], corners: [] });
  await put("both.json", {
    format: "mouldwright/cornice",
    version: 1,
    name: "x",
    springFromWallDeg: 38,
    springFromCeilingDeg: 52,
    wallsMm: [900],
    corners: [],
  });
  await put("corner.json", {
    format: "mouldwright/cornice",
    version: 1,
    name: "x",
    springFromWallDeg: 38,
    projectionMm: 40,
    heightMm: 50,
    wallsMm: [900, 900],
    corners: [{ cornerDeg: 180 }],
  });
  await bench.put("broken.json", "{ nothing");
});
afterAll(() => bench.clear());

const SIDE = [
  "side",
  "--sawn",
  "flat",
  "--depth",
  "380",
  "--fitted",
  "9",
  "--driest",
  "6",
  "--wettest",
  "12",
];
const MOVE = ["movement", "--width", "60", "--from", "12", "--to", "6", "--sawn", "flat"];

describe("refused with the value and the remedy", () => {
  test.each<[string, readonly string[], readonly string[]]>([
    ["a corner of 0", ["mitre", "--spring", "38", "--corner", "0"], ["corner of 0°", "90° is square"]],
    ["a corner of 180", ["mitre", "--spring", "38", "--corner", "180"], ["corner of 180°", "30° to 175°"]],
    ["a corner of 400", ["mitre", "--spring", "38", "--corner", "400"], ["corner of 400°"]],
    [
      "a spring of 400",
      ["mitre", "--spring", "400", "--corner", "90"],
      ["spring of 400°", "between 0° and 90°"],
    ],
    ["a spring below nought", ["mitre", "--spring=-3", "--corner", "90"], ["spring of -3°"]],
    ["no spring", ["mitre", "--corner", "90"], ["--spring is missing", "--spring 38"]],
    ["no corner", ["mitre", "--spring", "38"], ["--corner is missing"]],
    [
      "words for an angle",
      ["mitre", "--spring", "steep", "--corner", "90"],
      ["“steep” of --spring", "degrees"],
    ],
    ["nothing over nothing", ["mitre", "--spring", "1/0", "--corner", "90"], ["“1/0” of --spring"]],
    [
      "another side",
      ["mitre", "--spring", "38", "--from", "floor", "--corner", "90"],
      ["“floor” of --from", "wall or ceiling"],
    ],
    [
      "three lengths that make no triangle",
      ["mitre", "--spring", "38", "--triangle", "600,800,2000"],
      ["no triangle"],
    ],
    ["two lengths for a triangle", ["mitre", "--spring", "38", "--triangle", "600,800"], ["three lengths"]],
    ["a name too many", ["mitre", "38", "--spring", "38", "--corner", "90"], ["one name more"]],
    ["a negative width", ["frame", "--sight", "300x400", "--width", "-30"], ["less than nothing"]],
    ["a width of nothing", ["frame", "--sight", "300x400", "--width", "0"], ["0 mm"]],
    ["no size", ["frame", "--width", "30"], ["--sight is missing", "300x400"]],
    [
      "two sizes",
      ["frame", "--sight", "300x400", "--glass", "310x410", "--width", "30"],
      ["--glass is not known"],
    ],
    ["a size of one length", ["frame", "--sight", "300", "--width", "30"], ["“300” of --sight", "--sides 6"]],
    ["two sides", ["frame", "--sight", "300", "--sides", "2", "--width", "30"], ["side"]],
    ["half a side", ["frame", "--sight", "300", "--sides", "5.5", "--width", "30"], ["whole number"]],
    [
      "a rebate wider than the moulding",
      ["frame", "--sight", "300x400", "--width", "30", "--rebate", "35"],
      ["leaves no wood"],
    ],
    ["an outside that leaves nothing", ["frame", "--outside", "50x50", "--width", "30"], ["leaves nothing"]],
    [
      "a timber without its moisture",
      ["frame", "--sight", "300x400", "--width", "30", "--timber", "oak, white"],
      ["--from is missing"],
    ],
    [
      "a slope of 80",
      ["rake", "--slope", "80", "--projection", "25", "--height", "25"],
      ["slope of 80°", "at most 75°"],
    ],
    ["a slope of 400", ["rake", CORNICE, "--slope", "400"], ["slope of 400°"]],
    ["no slope", ["rake", CORNICE], ["--slope is missing"]],
    ["half a point", ["rake", "--slope", "20", "--height", "25"], ["--projection is missing"]],
    ["a rake without a section", ["rake", "--slope", "20"], ["needs a section file"]],
    ["a timber that is not there", [...MOVE, "--timber", "blak chery"], ["no “blak chery”", "Cherry, black"]],
    ["a timber that may be several", [...MOVE, "--timber", "red oak"], ["several timbers"]],
    [
      "moisture of an impossible kind",
      ["movement", "--timber", "black cherry", "--width", "60", "--from=-2", "--to", "6", "--sawn", "flat"],
      ["-2 %"],
    ],
    [
      "moisture above saturation",
      [
        "movement",
        "--timber",
        "black cherry",
        "--width",
        "60",
        "--from",
        "45",
        "--to",
        "6",
        "--sawn",
        "flat",
      ],
      ["45 %", "30 %"],
    ],
    [
      "no way of sawing",
      ["movement", "--timber", "black cherry", "--width", "60", "--from", "12", "--to", "6"],
      ["--sawn is missing"],
    ],
    [
      "a negative board",
      ["movement", "--timber", "black cherry", "--width=-60", "--from", "12", "--to", "6", "--sawn", "flat"],
      ["less than nothing"],
    ],
    ["humidity of 140 %", ["moisture", "--temperature", "21", "--humidity", "140"], ["140 %", "0 to 100 %"]],
    ["a temperature of 300", ["moisture", "--temperature", "300", "--humidity", "50"], ["300 °C"]],
    ["a temperature of words", ["moisture", "--temperature", "warm", "--humidity", "50"], ["“warm”", "-5"]],
    [
      "a corner said twice",
      ["mitre", "--spring", "38", "--corner", "90", "--sides", "8"],
      ["“8” of --sides", "--corner says"],
    ],
    [
      "a spring said twice",
      ["mitre", "--spring", "38", "--legs", "3x4", "--corner", "90"],
      ["--spring says"],
    ],
    ["a hip said twice", ["hip", "--slope", "30", "--adjacent", "40", "--jack", "41"], ["--adjacent says"]],
    ["a hopper of two sides", ["hopper", "--sides", "2", "--slope", "60"], ["2 sides"]],
    ["a hopper of half a side", ["hopper", "--sides", "4.5", "--slope", "60"], ["whole number"]],
    [
      "sides that lean outward past level",
      ["hopper", "--sides", "4", "--slope", "120"],
      ["120°", "0° and 90°"],
    ],
    ["a hopper without its slope", ["hopper", "--sides", "4"], ["--slope is missing"]],
    [
      "a length without a width",
      ["hopper", "--sides", "4", "--slope", "60", "--length", "200"],
      ["--width is missing"],
    ],
    [
      "a hopper of negative width",
      ["hopper", "--sides", "4", "--slope", "60", "--width=-20"],
      ["less than nothing"],
    ],
    ["one moulding alone", ["unlike", "--first", "54x50", "--spring", "38", "--corner", "90"], ["--second"]],
    [
      "sizes without a spring",
      ["unlike", "--first", "54x50", "--second", "30x50", "--corner", "90"],
      ["--spring is missing"],
    ],
    [
      "a moulding of no projection",
      ["unlike", "--first", "0x50", "--second", "30x50", "--spring", "38", "--corner", "90"],
      ["--first"],
    ],
    [
      "unlike mouldings at a corner of 400",
      ["unlike", "--first", "54x50", "--second", "30x50", "--spring", "38", "--corner", "400"],
      ["corner of 400°"],
    ],
    [
      "a moulding in a file that is not there",
      ["unlike", "--first", "gone.svg", "--second", "30x50", "--spring", "38", "--corner", "90"],
      ["no such file"],
    ],
    ["a hip on a slope of nothing", ["hip", "--slope", "0"], ["slope of 0°", "at most 85°"]],
    ["a hip on an upright side", ["hip", "--slope", "90"], ["slope of 90°"]],
    ["a hip over a straight wall", ["hip", "--slope", "30", "--corner", "180"], ["corner of 180°"]],
    ["a side cut of 95", ["hip", "--slope", "30", "--jack", "95"], ["side cut of 95°"]],
    [
      "a side cut beyond the corner",
      ["hip", "--slope", "30", "--jack", "5", "--corner", "60"],
      ["outside a corner of 60°"],
    ],
    [
      "a side of an unknown timber",
      [...SIDE, "--timber", "blak chery"],
      ["no “blak chery”", "Cherry, black"],
    ],
    [
      "a side fitted wetter than its wettest",
      [...SIDE.map((word) => (word === "9" ? "13" : word)), "--timber", "black cherry"],
      ["fitted at 13 %"],
    ],
    [
      "a screw behind the back",
      [...SIDE, "--timber", "black cherry", "--screws", "100,500"],
      ["500 mm", "380 mm deep"],
    ],
    [
      "a side without its depth",
      ["side", "--timber", "black cherry", "--sawn", "flat"],
      ["--depth is missing"],
    ],
    ["a timber nobody knows", ["timber", "blak chery"], ["no “blak chery”", "Cherry, black"]],
    ["ends of one length", ["stick", CORNICE, "--length", "900", "--ends", "50"], ["two lengths"]],
    ["parts without timber", ["stick", CORNICE, "--length", "900", "--parts", "x"], ["--timber is missing"]],
    ["a stick without a length", ["stick", CORNICE], ["--length is missing"]],
    ["a stick of no length", ["stick", CORNICE, "--length", "0"], ["0 mm long cannot be made"]],
    ["a cant of 90", ["stick", CORNICE, "--length", "900", "--cant", "90"], ["canted by 90°"]],
    [
      "timber that no split fits",
      ["stick", CORNICE, "--length", "900", "--timber", "5x5"],
      ["cannot be parted"],
    ],
  ])("%s", async (_, words, said) => {
    const ran = await runHere([...words, "--picture", bench.path("never.svg")]);
    expect(ran).toMatchObject({ code: 2, out: "" });
    for (const text of said) expect(ran.err.replace(/\s+/g, " ")).toContain(text);
    expect(await bench.names()).not.toContain("never.svg");
  });

  test.each<[string, string, string, readonly string[]]>([
    [
      "a piece longer than every stick",
      "lengths",
      "long.json",
      ["2506 mm", "Get a stick of at least 2606 mm"],
    ],
    ["a key misspelt", "lengths", "slip.json", ["sticks[0]", "Was “lengthMm” meant?"]],
    ["a piece below nought", "lengths", "negative.json", ["-2 mm"]],
    ["a newer file", "lengths", "newer.json", ["version 9"]],
    ["text that is no file of ours", "lengths", "broken.json", ["line 1"]],
    ["a cornice file for lengths", "lengths", "half.json", ["mouldwright/lengths"]],
    ["a cornice without its spring", "cornice", "half.json", ["springFromWallDeg"]],
    ["both springs", "cornice", "both.json", ["springFromCeilingDeg"]],
    ["a corner that is straight", "cornice", "corner.json", ["corners[0]", "180°"]],
    ["a file that is not there", "cornice", "gone.json", ["no such file"]],
  ])("%s", async (_, command, file, said) => {
    const ran = await runHere([command, bench.path(file)]);
    expect(ran).toMatchObject({ code: 2, out: "" });
    for (const text of said) expect(ran.err.replace(/\s+/g, " ").replace(/−/g, "-")).toContain(text);
  });

  test("a scribe where nothing is scribed", async () => {
    const ran = await runHere(["cornice", RUN, "--section", CORNICE, "--scribe", bench.path("none.svg")]);
    expect(ran).toMatchObject({ code: 2, out: "" });
    expect(ran.err).toContain("--scribe");
  });
});
