export function Content() {
  return <h1>light</h1>;
}
