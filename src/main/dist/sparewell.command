#!/bin/sh
# For macOS: drop a workbook on this file, or double-click it to see how to go on.
here=$(cd "${0%/*}" && pwd)
if [ $# -eq 0 ]; then
  "$here/sparewell" --help
else
  "$here/sparewell" "$@"
fi
code=$?
printf '\nPress Enter to close this window. '
read -r _
exit $code
