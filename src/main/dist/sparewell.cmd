@echo off
rem Starts Sparewell. Drop a workbook on this file and it is analysed.
setlocal
chcp 65001 >nul
set "here=%~dp0"
set "jar=%here%sparewell.jar"
set "java=java.exe"
if defined JAVA_HOME if exist "%JAVA_HOME%\bin\java.exe" set "java=%JAVA_HOME%\bin\java.exe"
"%java%" -version >nul 2>&1
if errorlevel 1 (
  echo Sparewell needs Java 17 or newer: install a Java 17 runtime and start again. 1>&2
  set "code=3"
  goto wait
)
rem The archive of loaded classes makes every start but the first one faster.
set "cache=%LOCALAPPDATA%\sparewell"
if not exist "%cache%" mkdir "%cache%" >nul 2>&1
for %%F in ("%jar%") do set "stamp=%%~zF"
set "archive=%cache%\start-%stamp%.jsa"
set "flags=-XX:+UseSerialGC -XX:TieredStopAtLevel=1 -Xmn24m -XX:-UsePerfData -Dfile.encoding=UTF-8"
if exist "%archive%" (
  set "share="-XX:SharedArchiveFile=%archive%" -Xshare:auto -Xlog:disable -Xlog:all=off"
) else (
  set "share="-XX:ArchiveClassesAtExit=%archive%" -Xlog:disable -Xlog:all=off"
)
set "verb="
if exist "%~1" set "verb=analyse"
"%java%" %flags% %share% -jar "%jar%" %verb% %*
set "code=%errorlevel%"
:wait
rem Dropped on or double-clicked: keep the window open until it is read.
echo %cmdcmdline% | find /i "%~f0" >nul && pause
exit /b %code%
