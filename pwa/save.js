// Hands a file to the person, under a name they will find again.
export const saveFile = (file, name = file.name) => {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(file);
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60000);
};
export const save = (name, type, text) => saveFile(new Blob([text], { type }), name);
