export function Content() {
  return <h1>shelf</h1>;
}
