#!/bin/sh
# For macOS: double-click it. Nothing can be dropped on a file of this kind, so it asks for the workbook.
here=$(cd "${0%/*}" && pwd)
if [ $# -eq 0 ]; then
  printf 'Drag your workbook, or a folder of them, into this window and press Enter: '
  # A name dragged in comes with a backslash before each blank, which read takes away without -r.
  # shellcheck disable=SC2162
  read book
  set -- "$book"
fi
if [ -z "$1" ]; then
  "$here/sparewell" --help
else
  "$here/sparewell" "$@"
fi
code=$?
printf '\nPress Enter to close this window. '
read -r _
exit $code
