/** Hands a file to the person: the browser downloads it, the desktop asks where it goes. */
export function handOverFile(content: Blob, fileName: string): void {
  const address = URL.createObjectURL(content);
  const link = document.createElement("a");
  link.href = address;
  link.download = fileName;
  link.click();
  // The download reads the address after this turn.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
