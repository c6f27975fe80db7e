# Sourced by ./test and ./screenshots: sees that there is a Chromium, by the system's own packages, where this user may install them.
ensure_chromium() {
  [ -n "${CLOSEMOWN_CHROMIUM:-}" ] && return 0
  command -v chromium >/dev/null 2>&1 || command -v chromium-browser >/dev/null 2>&1 && return 0
  local as="" log="$ROOT/artifacts/chromium-install.log"
  if ! command -v apt-get >/dev/null 2>&1; then chromium_missing "This system has no apt-get."; return 1; fi
  if [ "$(id -u)" != 0 ]; then
    if ! sudo -n true >/dev/null 2>&1; then chromium_missing "Installing needs root."; return 1; fi
    as="sudo -n"
  fi
  echo "closemown: installing Chromium for the browser tests (apt-get install chromium)..." >&2
  mkdir -p "$ROOT/artifacts"
  if $as apt-get update >"$log" 2>&1 &&
     $as env DEBIAN_FRONTEND=noninteractive apt-get install -y --no-install-recommends -o DPkg::Lock::Timeout=300 chromium >>"$log" 2>&1; then return 0; fi
  tail -n 5 "$log" >&2
  chromium_missing "The installation failed; all of it: $log"
  return 1
}

chromium_missing() {
  echo "closemown: no Chromium. $1" >&2
  echo "  On Debian: sudo apt-get install chromium. Elsewhere install it and set CLOSEMOWN_CHROMIUM to its program file." >&2
}
