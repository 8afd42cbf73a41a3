export function Content() {
  return <h1>cuts</h1>;
}
