export function Content() {
  return <h1>stick-and-fit</h1>;
}
