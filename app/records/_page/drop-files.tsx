"use client";

import { useRouter } from "next/navigation";
import { type DragEvent, type FormEvent, useRef, useState } from "react";
import { droppedFiles } from "./dropped-files";
import { sendFiles } from "./send-files";

/** Files to bring in, dropped or chosen. Without JavaScript it is a plain form that posts to the same place. */
export function DropFiles(props: { zones: readonly string[]; zone: string }) {
  const router = useRouter();
  const input = useRef<HTMLInputElement>(null);
  const [files, setFiles] = useState<readonly File[]>([]);
  const [over, setOver] = useState(false);
  const [sent, setSent] = useState<string | null>(null);
  const [wrong, setWrong] = useState<string | null>(null);

  async function drop(event: DragEvent) {
    event.preventDefault();
    setOver(false);
    const found = await droppedFiles(event.dataTransfer);
    setWrong(found.length === 0 ? "There was no record file in what was dropped." : null);
    setFiles((before) => [...before, ...found]);
  }

  async function send(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    if (files.length === 0) {
      setWrong("Choose at least one file.");
      return;
    }
    setWrong(null);
    const zone = String(new FormData(event.currentTarget).get("zone") ?? "");
    const answer = await sendFiles(files, zone, setSent);
    setSent(null);
    if ("sentence" in answer) setWrong(answer.sentence);
    else router.push(answer.location);
  }

  return (
    <form
      action="/api/records/import"
      method="post"
      encType="multipart/form-data"
      className="stack"
      onSubmit={send}
    >
      {/* biome-ignore lint/a11y/noStaticElementInteractions: dropping is for the mouse; the field inside does the same. */}
      <div
        className={over ? "empty drop-over stack-tight" : "empty stack-tight"}
        onDragOver={(event) => {
          event.preventDefault();
          setOver(true);
        }}
        onDragLeave={() => setOver(false)}
        onDrop={drop}
      >
        <label htmlFor="files">Record files</label>
        <p className="hint">
          Drop files or a folder here, or choose them: record files, or what another system exports.
          They are deleted from this machine once they are read.
        </p>
        <input
          ref={input}
          id="files"
          type="file"
          name="files"
          multiple
          accept=".csv,.xlsx,.json,.ndjson,.jsonl,.tsv,.txt,.log,.dat"
          onChange={(event) => setFiles([...(event.currentTarget.files ?? [])])}
        />
        {files.length > 0 ? (
          <ul className="small" aria-label="Files to bring in">
            {files.map((file) => (
              <li key={`${file.name}/${file.size}/${file.lastModified}`}>{file.name}</li>
            ))}
          </ul>
        ) : null}
      </div>
      <div className="form-row">
        <div>
          <label htmlFor="zone">Time zone of practices not yet known</label>
          <select id="zone" name="zone" defaultValue={props.zone}>
            {props.zones.map((zone) => (
              <option key={zone} value={zone}>
                {zone}
              </option>
            ))}
          </select>
        </div>
        <button type="submit" className="main" disabled={sent !== null}>
          {sent === null ? "Bring in" : "Sending …"}
        </button>
        {files.length > 0 && sent === null ? (
          <button
            type="button"
            onClick={() => {
              setFiles([]);
              if (input.current) input.current.value = "";
            }}
          >
            Choose others
          </button>
        ) : null}
      </div>
      <div role="status">
        {sent === null ? null : <p>{sent}</p>}
        {wrong === null ? null : <p className="form-error">{wrong}</p>}
      </div>
    </form>
  );
}
