@echo off
rem Starts Lapwright. Among its sources, on first use, builds it first; after a change of the sources run: mvn -q -Dquick -Dmaven.test.skip=true package
rem Needs Java 17 or newer (JAVA_HOME or PATH), unless it brings its own; for the build also Maven 3.8 or newer.
setlocal EnableExtensions DisableDelayedExpansion

set "HOME_FOLDER=%~dp0"
set "HOME_FOLDER=%HOME_FOLDER:~0,-1%"
set "TARGET=%HOME_FOLDER%\cli\target"
rem Unpacked from an archive: nothing to build, perhaps with a Java of its own.
if exist "%HOME_FOLDER%\lib\lapwright.jar" set "TARGET=%HOME_FOLDER%\lib"
set "JAR=%TARGET%\lapwright.jar"

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

if exist "%JAR%" goto start
if not exist "%HOME_FOLDER%\pom.xml" (
    echo lapwright: must be built first, and cannot be: there are no sources in "%HOME_FOLDER%". 1>&2
    exit /b 2
)
where mvn >nul 2>nul
if errorlevel 1 (
    echo lapwright: must be built first, and cannot be: Maven is not on the PATH ^(install Maven 3.8 or newer^). 1>&2
    exit /b 2
)
echo lapwright: first use; building. This takes a minute, once ... 1>&2
pushd "%HOME_FOLDER%"
call mvn -q -B -ntp -Dquick -Dmaven.test.skip=true package 1>&2 <nul
if errorlevel 1 (
    popd
    echo lapwright: the build failed; its messages are above. 1>&2
    exit /b 2
)
popd

:start
rem Classes that a lap, a sweep and an import need, read and checked beforehand; made once for each Java. Without it all works, only slower.
rem The size of the jar stands for its age, which a batch file cannot compare.
for %%I in ("%JAR%") do set "ARCHIVE=%TARGET%\lapwright-%JAVA_VERSION%-%%~zI.jsa"
set "DRAFT=%TARGET%\draft-%RANDOM%%RANDOM%"
set TRAIN="%JAVA%" -Xlog:disable -Xshare:off -XX:TieredStopAtLevel=1 -XX:+UseSerialGC
if exist "%ARCHIVE%" goto run
rem Java 17 finds no class of ours in an archive made in a folder with a space in its path: spare the work.
if not "%TARGET: =%"=="%TARGET%" goto run
mkdir "%DRAFT%" 2>nul
if errorlevel 1 goto run
if exist "%HOME_FOLDER%\lib\lapwright.jar" echo lapwright: first use; preparing quick starts. This takes some seconds, once ... 1>&2
%TRAIN% "-XX:DumpLoadedClassList=%DRAFT%\lap" -jar "%JAR%" lap gt-talvex castelvane --against rear-wing=3 --out "%DRAFT%\lap-files" >nul 2>nul <nul
%TRAIN% "-XX:DumpLoadedClassList=%DRAFT%\sweep" -jar "%JAR%" sweep gt-talvex castelvane --vary rear-wing=3,5 --out "%DRAFT%\sweep-files" >nul 2>nul <nul
%TRAIN% "-XX:DumpLoadedClassList=%DRAFT%\geojson" -jar "%JAR%" circuit import thornmere.geojson --out "%DRAFT%\geojson.json" >nul 2>nul <nul
%TRAIN% "-XX:DumpLoadedClassList=%DRAFT%\csv" -jar "%JAR%" circuit import oxhollow.csv --open --out "%DRAFT%\csv.json" >nul 2>nul <nul
copy /b "%DRAFT%\lap" + "%DRAFT%\sweep" + "%DRAFT%\geojson" + "%DRAFT%\csv" "%DRAFT%\classes" >nul 2>nul
"%JAVA%" -Xlog:disable -Xshare:dump "-XX:SharedClassListFile=%DRAFT%\classes" "-XX:SharedArchiveFile=%DRAFT%\jsa" -cp "%JAR%" >nul 2>nul <nul
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
for %%A in (%*) do if /i "%%~A"=="--line" set "COMPILER="
"%JAVA%" %SHARED% %COMPILER% -Xlog:disable -Xlog:all=error:stderr -XX:+UseSerialGC -XX:-UsePerfData -jar "%JAR%" %*
exit /b %ERRORLEVEL%
