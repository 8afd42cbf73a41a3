/**
 * The page's policy forbids code made from text, which the schemas would try as soon as the first of them is made: this
 * is imported before anything else, by the page and by every worker.
 */
import { config } from "zod";

config({ jitless: true });
