@echo off
rem Starts Steadypull with a suitable Java, wherever this folder stands.
setlocal
set "home=%~dp0.."
set "java=java"
if defined JAVA_HOME if exist "%JAVA_HOME%\bin\java.exe" set "java=%JAVA_HOME%\bin\java.exe"
set "release="
for /f "tokens=3" %%v in ('""%java%" -version 2>&1" ^| findstr /i "version"') do if not defined release set "release=%%~v"
for /f "delims=." %%m in ("%release%") do set "release=%%m"
if not defined release set "release=0"
if %release% LSS 25 (
  echo Steadypull could not start: it needs Java 25 or newer, found "%release%". Install a Java 25 runtime, or set JAVA_HOME to one. 1>&2
  exit /b 1
)
"%java%" --module-path "%home%\javafx" --add-modules javafx.controls --enable-native-access=javafx.graphics,ALL-UNNAMED --sun-misc-unsafe-memory-access=allow %STEADYPULL_JAVA_OPTIONS% -cp "%home%\lib\*" steadypull.Steadypull %*
exit /b %ERRORLEVEL%
