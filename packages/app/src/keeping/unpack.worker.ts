/** Opens a packed file away from the screen. */
import { unpack } from "./packed-files.ts";

addEventListener("message", ({ data }: MessageEvent<Uint8Array>) => {
  postMessage(unpack(data));
});
