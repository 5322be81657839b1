/* Stands in for java.exe: writes its arguments to the file in STUB_LOG, one a line in UTF-8, a blank line after. With STUB_OLD it
   does as a Java too old for a jar: -version works, the jar does not. */
#include <stdio.h>
#include <stdlib.h>
#include <windows.h>

static int is(const wchar_t *one, const wchar_t *other) { return one && !wcscmp(one, other); }

int wmain(int count, wchar_t **words) {
  if (is(words[count - 1], L"-version")) return 0;
  if (_wgetenv(L"STUB_OLD")) return 1;
  if (is(words[count - 1], L"--version")) return 0;
  FILE *log = _wfopen(_wgetenv(L"STUB_LOG"), L"ab");
  for (int i = 1; i < count; i++) {
    char text[4096];
    WideCharToMultiByte(CP_UTF8, 0, words[i], -1, text, sizeof text, NULL, NULL);
    fprintf(log, "%s\n", text);
    if (!wcsncmp(words[i], L"-XX:ArchiveClassesAtExit=", 25)) fclose(_wfopen(words[i] + 25, L"wb"));
  }
  fputc('\n', log);
  fclose(log);
  return 7;
}
