@echo off
rem Starts Sparewell. Drop a workbook, several, or a folder on this file and they are analysed.
setlocal
chcp 65001 >nul
set "here=%~dp0"
set "jar=%here%sparewell.jar"
set "java="
for %%J in (java.exe) do set "java=%%~$PATH:J"
if defined JAVA_HOME if exist "%JAVA_HOME%\bin\java.exe" set "java=%JAVA_HOME%\bin\java.exe"
if not defined java goto nojava
set "verb=analyse"
set "first=%~1"
if not defined first set "verb="
if defined first if "%first:~0,1%"=="-" set "verb="
for %%V in (analyse check new import post share watch help) do if /i "%~1"=="%%V" set "verb="
if defined verb if not exist "%~1" goto nofile
set "analyses=%verb%"
if /i "%~1"=="analyse" set "analyses=yes"
rem The slower compiler pays only beyond about a hundred workbooks at a time.
set "flags=-XX:+UseSerialGC -XX:TieredStopAtLevel=1 -Xmn40m -XX:-UsePerfData -Dfile.encoding=UTF-8"
rem The archive of loaded classes makes every start but the first one faster; it belongs to one jar
rem and one Java, and Java itself passes over it where it no longer fits.
set "cache=%LOCALAPPDATA%\sparewell"
set "stamp="
for %%F in ("%jar%") do set "stamp=%%~zF-%%~tF"
for %%F in ("%java%") do set "stamp=%stamp%-%%~zF-%%~tF"
set "stamp=%stamp: =%"
set "stamp=%stamp:/=%"
set "stamp=%stamp:.=%"
set "stamp=%stamp::=%"
set "archive=%cache%\start-%stamp%.jsa"
if not exist "%archive%" goto noarchive
"%java%" %flags% -Xshare:auto "-XX:SharedArchiveFile=%archive%" -Xlog:disable -Xlog:all=off -jar "%jar%" %verb% %*
goto done
:noarchive
"%java%" -jar "%jar%" --version >nul 2>&1
if errorlevel 1 goto oldjava
if not exist "%cache%" mkdir "%cache%" >nul 2>&1
if defined analyses if exist "%cache%" goto first
"%java%" %flags% -jar "%jar%" %verb% %*
goto done
:first
del "%cache%\start-*.jsa" >nul 2>&1
set "fresh=%archive%.%random%"
"%java%" %flags% "-XX:ArchiveClassesAtExit=%fresh%" -Xlog:disable -Xlog:all=off -jar "%jar%" %verb% %*
set "code=%errorlevel%"
if exist "%fresh%" move /y "%fresh%" "%archive%" >nul 2>&1
goto wait
:nofile
echo There is no such file or folder, or its name was cut off at an ampersand or caret: rename it without, or put a blank into it. 1>&2
set "code=3"
goto wait
:oldjava
echo Sparewell needs Java 17 or newer, and this one is older or does not start: "%java%" 1>&2
set "code=3"
goto wait
:nojava
echo Sparewell needs Java 17 or newer: install a Java 17 runtime and start again. 1>&2
set "code=3"
goto wait
:done
set "code=%errorlevel%"
:wait
rem Dropped on or double-clicked: keep the window open until it is read, and run nothing else of that line.
setlocal EnableDelayedExpansion
if "!cmdcmdline:%~nx0=!"=="!cmdcmdline!" exit /b %code%
pause
exit %code%
