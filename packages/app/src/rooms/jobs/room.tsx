export function Content() {
  return <h1>jobs</h1>;
}
