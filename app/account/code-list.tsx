/** Recovery codes, told once. */
export function CodeList(props: { codes: readonly string[] }) {
  return (
    <>
      <p>
        Recovery codes, each for one sign-in without the device. They are shown only now: print them
        or write them down, and keep them apart from the device.
      </p>
      <ul>
        {props.codes.map((code) => (
          <li key={code}>
            <code>{code}</code>
          </li>
        ))}
      </ul>
    </>
  );
}
