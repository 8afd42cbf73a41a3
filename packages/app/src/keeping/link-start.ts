/** How an address that brings a job is told; what it brings is unpacked elsewhere, when there is something to unpack. */
export const LINK_START = "#job=";

/** Whether an address's fragment brings a job. */
export function bringsJob(fragment: string): boolean {
  return fragment.startsWith(LINK_START);
}
