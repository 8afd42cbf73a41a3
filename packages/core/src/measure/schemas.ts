/**
 * The one door to the schemas. They never make code from text: a page's policy forbids it, and the first schema that is
 * made would try. Everything else imports `z` from here, so that this is settled before any schema is.
 */
import { config, z } from "zod";

config({ jitless: true });

export { z };
