export function Content() {
  return <h1>sheets</h1>;
}
