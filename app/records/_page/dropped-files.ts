/** Endings of files that can hold records; whatever else lies in a dropped folder is passed over. */
const endings = /\.(csv|xlsx|json|ndjson|jsonl|tsv|txt|log|dat)$/i;

/** The record files of what was dropped, those in folders too, by name. */
export async function droppedFiles(dropped: DataTransfer): Promise<File[]> {
  // The entries must be taken before anything is awaited: the list is emptied then.
  const entries = [...dropped.items].flatMap((item) => item.webkitGetAsEntry() ?? []);
  const found = (await Promise.all(entries.map(filesOf))).flat();
  return found
    .filter((file) => endings.test(file.name))
    .sort((a, b) => a.name.localeCompare(b.name));
}

async function filesOf(entry: FileSystemEntry): Promise<File[]> {
  if (isFile(entry))
    return [await new Promise<File>((resolve, reject) => entry.file(resolve, reject))];
  if (!isFolder(entry)) return [];
  const reader = entry.createReader();
  const inside: FileSystemEntry[] = [];
  // A folder is read by parts; an empty part is the end.
  for (;;) {
    const some = await new Promise<FileSystemEntry[]>((resolve, reject) =>
      reader.readEntries(resolve, reject),
    );
    if (some.length === 0) break;
    inside.push(...some);
  }
  return (await Promise.all(inside.map(filesOf))).flat();
}

function isFile(entry: FileSystemEntry): entry is FileSystemFileEntry {
  return entry.isFile;
}

function isFolder(entry: FileSystemEntry): entry is FileSystemDirectoryEntry {
  return entry.isDirectory;
}
