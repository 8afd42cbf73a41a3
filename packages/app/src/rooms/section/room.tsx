export function Content() {
  return <h1>section</h1>;
}
