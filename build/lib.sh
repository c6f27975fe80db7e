# Shared by ./closemown and ./test.
# Finds the SDK, and says clearly what is missing.
find_dotnet() {
  if [ -z "${DOTNET:-}" ]; then
    if command -v dotnet >/dev/null 2>&1; then DOTNET=dotnet
    elif [ -x "$HOME/.dotnet/dotnet" ]; then DOTNET="$HOME/.dotnet/dotnet"
    else
      echo "closemown: the .NET SDK is missing: no 'dotnet' on the PATH." >&2
      echo "  Install the .NET 10 SDK (on Debian: the package dotnet-sdk-10.0 of the .NET package feed), then run this again." >&2
      exit 69
    fi
  fi
  # An SDK older than global.json asks for makes 'dotnet --version' fail.
  if ! version=$(cd "$ROOT" && "$DOTNET" --version 2>/dev/null); then
    echo "closemown: the .NET SDK found ($DOTNET) is not the one asked for in global.json (10.0.400 or later of 10.0)." >&2
    echo "  Installed: $("$DOTNET" --list-sdks 2>/dev/null | tr '\n' ' ')" >&2
    echo "  Install the .NET 10 SDK, then run this again." >&2
    exit 69
  fi
  export DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1 DOTNET_CLI_WORKLOAD_UPDATE_NOTIFY_DISABLE=1
}

# One build at a time, on file descriptor 9, which what is started must not inherit (9>&-): the compiler's server outlives the build.
# With -n: fails where another holds it. Where the system has no flock, everybody has it.
lock() {
  mkdir -p "$ROOT/artifacts"
  exec 9>"$ROOT/artifacts/closemown.lock"
  if command -v flock >/dev/null 2>&1; then flock "$@" 9; fi
}
