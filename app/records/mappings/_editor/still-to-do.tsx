"use client";

/** What has to be done before the file may be brought in; each leads to its place. */
export function StillToDo(props: {
  todo: readonly { readonly words: string; readonly id: string }[];
}) {
  return (
    <div className="stack-tight">
      <p>Before it can be brought in:</p>
      <ul>
        {props.todo.map(({ words, id }) => (
          <li key={`${id} ${words}`}>
            <button
              type="button"
              className="plain"
              onClick={() => {
                const found = document.getElementById(id);
                const inside = found?.matches("input, select, button")
                  ? found
                  : found?.querySelector<HTMLElement>("input, select, button");
                (inside ?? found)?.focus();
                found?.scrollIntoView({ block: "center" });
              }}
            >
              {words}
            </button>
          </li>
        ))}
      </ul>
    </div>
  );
}
