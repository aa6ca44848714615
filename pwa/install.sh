# Read by pwa/run and tests/run: installs only what is missing, and says so. Debian 12.

install_packages() {
  local missing=() package
  for package in "$@"; do
    dpkg-query -W -f='${Status}' "$package" 2>/dev/null | grep -q 'ok installed' || missing+=("$package")
  done
  [ ${#missing[@]} -eq 0 ] && return
  local as_root=()
  if [ "$(id -u)" -ne 0 ]; then
    command -v sudo >/dev/null || { echo "Missing: ${missing[*]}. Install them as root, then run this again." >&2; return 1; }
    as_root=(sudo)
  fi
  echo "Installing: ${missing[*]}"
  export DEBIAN_FRONTEND=noninteractive
  "${as_root[@]}" apt-get update -qq
  "${as_root[@]}" apt-get install -y -qq --no-install-recommends "${missing[@]}" >/dev/null
}

# The lock file is the whole truth: what npm laid in is kept with the lock it came from, and made anew when they differ.
install_modules() {
  local folder=$1
  cmp -s "$folder/package-lock.json" "$folder/node_modules/.stopgap-lock" && return
  echo "Installing the npm packages of $(basename "$folder")"
  (cd "$folder" && npm ci --ignore-scripts --silent)
  cp "$folder/package-lock.json" "$folder/node_modules/.stopgap-lock"
}
