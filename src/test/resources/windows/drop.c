/* Starts the command line that stands in a UTF-8 file, to the letter, and ends as it does: no shell in between quotes anything anew. */
#include <stdio.h>
#include <windows.h>

int wmain(int count, wchar_t **words) {
  char text[8192] = {0};
  wchar_t line[8192];
  FILE *file = _wfopen(words[1], L"rb");
  fread(text, 1, sizeof text - 1, file);
  fclose(file);
  MultiByteToWideChar(CP_UTF8, 0, text, -1, line, 8192);
  STARTUPINFOW start = {sizeof start};
  PROCESS_INFORMATION process;
  if (!CreateProcessW(NULL, line, NULL, NULL, TRUE, 0, NULL, NULL, &start, &process)) return 99;
  WaitForSingleObject(process.hProcess, INFINITE);
  DWORD code;
  GetExitCodeProcess(process.hProcess, &code);
  return (int)code;
}
