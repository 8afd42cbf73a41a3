import { expect, test } from "vitest";
import { drawQueue } from "./draw-queue.ts";

/** A page whose drawing is finished from outside. */
function page(name: string, told: string[]) {
  let finish = (): void => undefined;
  const draw = (signal: AbortSignal): Promise<void> =>
    new Promise((resolve) => {
      told.push(`${name} begins`);
      signal.addEventListener("abort", () => resolve());
      finish = () => {
        told.push(`${name} drawn`);
        resolve();
      };
    });
  return { draw, finish: () => finish() };
}

const turn = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));

test("the second begins when the first is drawn", async () => {
  const told: string[] = [];
  const queue = drawQueue();
  const [first, second] = [page("first", told), page("second", told)];
  queue.add(first.draw);
  queue.add(second.draw);
  await turn();
  expect(told).toEqual(["first begins"]);
  first.finish();
  await turn();
  expect(told).toEqual(["first begins", "first drawn", "second begins"]);
});

test("what is called back before its turn is never begun", async () => {
  const told: string[] = [];
  const queue = drawQueue();
  const [first, second, third] = [page("first", told), page("second", told), page("third", told)];
  queue.add(first.draw);
  const callBack = queue.add(second.draw);
  queue.add(third.draw);
  callBack();
  first.finish();
  await turn();
  expect(told).toEqual(["first begins", "first drawn", "third begins"]);
});

test("what is called back while it is drawn makes room for the next", async () => {
  const told: string[] = [];
  const queue = drawQueue();
  const callBack = queue.add(page("first", told).draw);
  queue.add(page("second", told).draw);
  await turn();
  callBack();
  await turn();
  expect(told).toEqual(["first begins", "second begins"]);
});

test("a page that cannot be drawn does not hold up the others", async () => {
  const told: string[] = [];
  const queue = drawQueue();
  queue.add(() => Promise.reject(new Error("broken")));
  queue.add(page("second", told).draw);
  await turn();
  expect(told).toEqual(["second begins"]);
});
