@echo off
rem Starts Lapwright. Among its sources, on first use, builds it first; after a change of the sources delete the folder target\launcher.
rem Needs Java 17 or newer (JAVA_HOME or PATH), unless it brings its own; for the build also Maven 3.8 or newer.
setlocal EnableExtensions DisableDelayedExpansion

set "HOME_FOLDER=%~dp0"
set "HOME_FOLDER=%HOME_FOLDER:~0,-1%"
rem What Maven is writing is never started: a finished command is moved here.
set "STORE=%HOME_FOLDER%\target\launcher"
rem Unpacked from an archive: nothing to build, perhaps with a Java of its own.
if exist "%HOME_FOLDER%\lib\lapwright.jar" set "STORE=%HOME_FOLDER%\lib"
set "JAR=%STORE%\lapwright.jar"
set "STAMP=%STORE%\stamp"
set "LOCK=%STORE%\lock"
rem Seconds to wait for another build before giving up.
set "PATIENCE=%LAPWRIGHT_BUILD_WAIT_S%"
if not defined PATIENCE set "PATIENCE=900"

set "JAVA="
if exist "%HOME_FOLDER%\runtime\bin\java.exe" set "JAVA=%HOME_FOLDER%\runtime\bin\java.exe"
if not defined JAVA if defined JAVA_HOME if exist "%JAVA_HOME%\bin\java.exe" set "JAVA=%JAVA_HOME%\bin\java.exe"
:look
if not defined JAVA for %%I in (java.exe) do set "JAVA=%%~$PATH:I"
if not defined JAVA (
    echo lapwright: needs Java 17 or newer; none found. Install one, or set JAVA_HOME to it. 1>&2
    exit /b 2
)

rem The release file of the Java installation says its version without starting it.
set "JAVA_VERSION="
for %%I in ("%JAVA%") do set "JAVA_FOLDER=%%~dpI.."
if exist "%JAVA_FOLDER%\release" (
    for /f "usebackq tokens=2 delims==" %%V in (`findstr /b "JAVA_VERSION=" "%JAVA_FOLDER%\release"`) do set "JAVA_VERSION=%%~V"
)
rem Without that file the version goes unchecked.
if not defined JAVA_VERSION set "JAVA_VERSION=17"
for /f "tokens=1 delims=.-+" %%M in ("%JAVA_VERSION%") do set "JAVA_MAJOR=%%M"
rem An old one in JAVA_HOME: look on the PATH before giving up.
if %JAVA_MAJOR% LSS 17 if defined JAVA_HOME (
    set "JAVA="
    set "JAVA_HOME="
    goto look
)
if %JAVA_MAJOR% LSS 17 (
    echo lapwright: needs Java 17 or newer; "%JAVA%" is Java %JAVA_VERSION%. Install one, or set JAVA_HOME to it. 1>&2
    exit /b 2
)

if exist "%HOME_FOLDER%\lib\lapwright.jar" goto start
rem What is no number would be compared by text, and waited for at once or never. Digits part words, so that digits alone leave none; the
rem second line reads what begins with the sign that the first takes for a remark.
set "OTHER="
for /f "eol=0 delims=0123456789" %%W in ("%PATIENCE%") do set "OTHER=yes"
for /f "eol=1 delims=0123456789" %%W in ("%PATIENCE%") do set "OTHER=yes"
if defined OTHER (
    echo lapwright: LAPWRIGHT_BUILD_WAIT_S: '%PATIENCE%' is not a whole number of seconds; set it to one, such as 900. 1>&2
    exit /b 2
)
call :whole
if not defined REASON goto start
if not exist "%HOME_FOLDER%\pom.xml" (
    echo lapwright: must be built first, and cannot be: there are no sources in "%HOME_FOLDER%". 1>&2
    exit /b 2
)
if not exist "%STORE%\" mkdir "%STORE%" 2>nul
if not exist "%STORE%\" (
    echo lapwright: must be built first, and cannot be: "%STORE%" is not writable. 1>&2
    exit /b 2
)
if not exist "%JAVA_FOLDER%\bin\javac.exe" (
    echo lapwright: must be built first, and cannot be: "%JAVA_FOLDER%" has no compiler ^(set JAVA_HOME to a JDK^). 1>&2
    exit /b 2
)
where mvn >nul 2>nul
if errorlevel 1 (
    echo lapwright: must be built first, and cannot be: Maven is not on the PATH ^(install Maven 3.8 or newer^). 1>&2
    exit /b 2
)

rem One build at a time: a second start waits, then finds the work done. A batch file knows no process of its own, so that a lock
rem without a build is told by the time alone.
set "WAITED=0"
:lock
mkdir "%LOCK%" 2>nul
if not errorlevel 1 goto locked
if not exist "%LOCK%\" (
    echo lapwright: must be built first, and cannot be: "%STORE%" is not writable. 1>&2
    exit /b 2
)
set "SINCE=unknown"
if exist "%LOCK%\owner" set /p SINCE=<"%LOCK%\owner"
if %WAITED% EQU 0 echo lapwright: another build runs (process unknown, since %SINCE%): waiting ... 1>&2
if %WAITED% GEQ %PATIENCE% goto given_up
set /a WAITED+=1 >nul
rem A second goes by.
ping -n 2 127.0.0.1 >nul
goto lock
:given_up
echo lapwright: another build (process unknown, since %SINCE%) has not ended in %PATIENCE% s. If none runs, delete the folder "%LOCK%" and start again. 1>&2
exit /b 2

:locked
>"%LOCK%\owner" echo %DATE% %TIME%
call :whole
if not defined REASON goto unlock
if "%REASON%"=="absent" echo lapwright: first use; building. This takes a minute, once ... 1>&2
if "%REASON%"=="damaged" echo lapwright: what was built is damaged; building again ... 1>&2
rem In folders of its own, whatever else is being built here.
set "BUILD=build-%RANDOM%%RANDOM%"
pushd "%HOME_FOLDER%"
for /d %%D in (target\build-* core\target\build-* shared\target\build-* tracks-demo\target\build-* charts\target\build-* cli\target\build-*) do rmdir /s /q "%%D" 2>nul
call mvn -q -B -ntp -Dquick -Dmaven.test.skip=true -Dbuild.folder=target/%BUILD% package 1>&2 <nul
set "FAILED=%ERRORLEVEL%"
popd
if not "%FAILED%"=="0" (
    rmdir /s /q "%LOCK%" 2>nul
    echo lapwright: the build failed; its messages are above. 1>&2
    exit /b 2
)
rem At no moment is there half a command: it is moved, and the stamp, its size, is written last.
del "%STAMP%" 2>nul
move /y "%HOME_FOLDER%\cli\target\%BUILD%\lapwright.jar" "%JAR%" >nul
for %%I in ("%JAR%") do >"%LOCK%\stamp" echo %%~zI
move /y "%LOCK%\stamp" "%STAMP%" >nul
for %%M in (. core shared tracks-demo charts cli) do rmdir /s /q "%HOME_FOLDER%\%%M\target\%BUILD%" 2>nul
call :whole
if not defined REASON goto unlock
rmdir /s /q "%LOCK%" 2>nul
echo lapwright: cannot put the command into "%STORE%": perhaps the disk is full. 1>&2
exit /b 2
:unlock
rmdir /s /q "%LOCK%" 2>nul
goto start

rem Sets REASON to why a build is called for, or to nothing: the command must be there and have the size that its stamp says.
:whole
set "REASON=absent"
if not exist "%JAR%" exit /b 0
set "REASON=damaged"
if not exist "%STAMP%" exit /b 0
set "SIZE="
set /p SIZE=<"%STAMP%"
for %%I in ("%JAR%") do if "%%~zI"=="%SIZE%" set "REASON="
exit /b 0

:start
rem Classes that a lap, a sweep, a brief and an import need, read and checked beforehand; made once for each Java. Without it all works, only slower.
rem The size of the jar stands for its age, which a batch file cannot compare.
for %%I in ("%JAR%") do set "ARCHIVE=%STORE%\lapwright-%JAVA_VERSION%-%%~zI.jsa"
set "DRAFT=%STORE%\draft-%RANDOM%%RANDOM%"
set TRAIN="%JAVA%" -Xlog:disable -Xshare:off -XX:TieredStopAtLevel=1 -XX:+UseSerialGC
if exist "%ARCHIVE%" goto run
rem Java 17 finds no class of ours in an archive made in a folder with a space in its path: spare the work.
if not "%STORE: =%"=="%STORE%" goto run
mkdir "%DRAFT%" 2>nul
if errorlevel 1 goto run
if exist "%HOME_FOLDER%\lib\lapwright.jar" echo lapwright: first use; preparing quick starts. This takes some seconds, once ... 1>&2
%TRAIN% "-XX:DumpLoadedClassList=%DRAFT%\lap" -jar "%JAR%" lap gt-talvex castelvane --against rear-wing=3 --out "%DRAFT%\lap-files" >nul 2>nul <nul
%TRAIN% "-XX:DumpLoadedClassList=%DRAFT%\sweep" -jar "%JAR%" sweep gt-talvex castelvane --vary rear-wing=3,5 --out "%DRAFT%\sweep-files" >nul 2>nul <nul
%TRAIN% "-XX:DumpLoadedClassList=%DRAFT%\geojson" -jar "%JAR%" circuit import thornmere.geojson --out "%DRAFT%\geojson.json" >nul 2>nul <nul
%TRAIN% "-XX:DumpLoadedClassList=%DRAFT%\csv" -jar "%JAR%" circuit import oxhollow.csv --open --out "%DRAFT%\csv.json" >nul 2>nul <nul
%TRAIN% "-XX:DumpLoadedClassList=%DRAFT%\brief" -jar "%JAR%" brief student-pipit harrowmere --line middle --vary rear-sprocket --draws 20 --out "%DRAFT%\brief-files" >nul 2>nul <nul
rem Java 17 falls over a lambda that is named twice: those of a brief alone, whose lines begin with @; a class may be named again.
copy /b "%DRAFT%\brief" "%DRAFT%\classes" >nul 2>nul
for %%L in (lap sweep geojson csv) do findstr /v /b "@" "%DRAFT%\%%L" >>"%DRAFT%\classes" 2>nul
"%JAVA%" -Xlog:disable -Xshare:dump "-XX:ErrorFile=%DRAFT%\crash" "-XX:SharedClassListFile=%DRAFT%\classes" "-XX:SharedArchiveFile=%DRAFT%\jsa" -cp "%JAR%" >nul 2>nul <nul
rem An empty archive, too, is remembered: a machine that cannot make one is not asked each time.
if not exist "%DRAFT%\jsa" type nul >"%DRAFT%\jsa"
if exist "%DRAFT%\jsa" move /y "%DRAFT%\jsa" "%ARCHIVE%" >nul 2>nul
rmdir /s /q "%DRAFT%" >nul 2>nul

:run
set "SHARED="
for %%I in ("%ARCHIVE%") do if exist "%%~I" if %%~zI GTR 0 set SHARED="-XX:SharedArchiveFile=%ARCHIVE%" -Xshare:auto
rem A short command ends before the second compiler has paid for itself; a study needs it.
set "COMPILER="
for %%C in (lap show circuit demo help --help --version) do if /i "%~1"=="%%C" set "COMPILER=-XX:TieredStopAtLevel=1 -Xmn96m"
rem A search for a line is a study.
for %%A in (%*) do if /i "%%~A"=="--line" set "COMPILER=%STUDY%"
for %%A in (%*) do if /i "%%~A"=="--beside" set "COMPILER=%STUDY%"
"%JAVA%" %SHARED% %COMPILER% -Xlog:disable -Xlog:all=error:stderr -XX:+UseSerialGC -XX:-UsePerfData -jar "%JAR%" %*
exit /b %ERRORLEVEL%
