# Sourced by the commands in this folder. Prepares what a command needs, once:
# a virtual environment, the npm packages, a browser. A stamp beside each records
# the lock file it was made from, so a second run does nothing and needs no network.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

VENV_PYTHON=.venv/bin/python
SOURCE_ONLY=psychrolib # published without a ready-built package
export PIP_DISABLE_PIP_VERSION_CHECK=1 PYTHONPYCACHEPREFIX=$PWD/.cache/bytecode

fail() { echo >&2; printf '%s\n' "$@" >&2; exit 1; }

# step "what is done" command... : runs it and says how long it took.
step() {
  local title=$1 started=$EPOCHREALTIME status=0
  shift
  "$@" || status=$?
  local took=$(( (${EPOCHREALTIME/[.,]/} - ${started/[.,]/}) / 100000 ))
  printf '%6d.%d s  %s\n' $((took / 10)) $((took % 10)) "$title"
  return $status
}

# Two commands started at once must not build the same folder: they queue here.
lock() { mkdir -p .cache; exec 9>.cache/lock; flock 9; }
unlock() { exec 9>&-; }

stamp_of() { cat "$@" | sha256sum | cut -d' ' -f1; }
stamped() { [[ -f $1 && $(<"$1") == "$2" ]]; }

find_python() {
  local candidate
  for candidate in ${PYTHON:-} python3 python3.13 python3.12 python3.11; do
    if "$candidate" -c 'import sys; sys.exit(sys.version_info < (3, 11))' 2>/dev/null; then
      echo "$candidate"
      return
    fi
  done
  fail "Python 3.11 or newer is needed and was not found." \
       "Install it (on Debian: apt-get install python3 python3-venv), or name one: PYTHON=/path/to/python3 $0"
}

make_venv() {
  "$VENV_PYTHON" -c 'import sys; sys.exit(sys.version_info < (3, 11))' 2>/dev/null && return
  local python
  python=$(find_python) || exit 1
  rm -rf .venv
  if ! "$python" -m venv .venv > .cache/venv.log 2>&1; then
    rm -rf .venv
    cat .cache/venv.log >&2
    fail "A virtual environment could not be made with $python." \
         "On Debian and its kin: apt-get install python3-venv"
  fi
}

install_python_packages() {
  local file=$1 stamp
  stamp=$(stamp_of "$file")
  stamped ".venv/$file.stamp" "$stamp" && return
  "$VENV_PYTHON" -m pip install --require-hashes --only-binary :all: --no-binary "$SOURCE_ONLY" \
    -r "$file" > .cache/pip.log 2>&1 || {
    cat .cache/pip.log >&2
    fail "The Python packages of $file could not be installed (see above)." \
         "The first run needs the network; later runs do not."
  }
  echo "$stamp" > ".venv/$file.stamp"
}

# The auditor has an environment of its own: what it needs is not for the site, and goes without it offline.
install_auditor() {
  local file=requirements-audit.txt folder=.cache/audit stamp
  stamp=$(stamp_of "$file")
  stamped "$folder/stamp" "$stamp" && return
  "$VENV_PYTHON" -m venv --clear "$folder" > .cache/audit.log 2>&1 &&
    "$folder/bin/python" -m pip install --require-hashes --only-binary :all: -r "$file" >> .cache/audit.log 2>&1 &&
    echo "$stamp" > "$folder/stamp"
}

install_npm_packages() {
  local stamp
  stamp=$(stamp_of package.json package-lock.json)
  stamped node_modules/.stamp "$stamp" && return
  command -v npm > /dev/null || fail "npm is needed to fetch the browser's Python engine, and was not found." \
                                     "On Debian and its kin: apt-get install npm"
  npm ci --ignore-scripts --no-audit --no-fund --loglevel=error > .cache/npm.log 2>&1 || {
    cat .cache/npm.log >&2
    fail "npm could not install the packages of package-lock.json (see above)." \
         "The first run needs the network; later runs do not."
  }
  echo "$stamp" > node_modules/.stamp
}

# find_chromium [CANDIDATE...] : the one that is named, else the first of the candidates, else any.
find_chromium() {
  local candidate
  for candidate in ${CHROMIUM:-} "$@" chromium chromium-browser google-chrome google-chrome-stable; do
    if "$candidate" --version > /dev/null 2>&1; then
      command -v "$candidate"
      return
    fi
  done
  return 1
}

# apt_install PACKAGE... : from Debian's packages; says nothing and does nothing where that is not allowed.
apt_install() {
  local as_root=()
  if [[ $(id -u) != 0 ]]; then as_root=(sudo -n); fi
  command -v apt-get > /dev/null && "${as_root[@]}" true 2> /dev/null || return 0
  echo "Installing $* with apt-get ..."
  { "${as_root[@]}" apt-get update -qq &&
    DEBIAN_FRONTEND=noninteractive "${as_root[@]}" apt-get install -y -qq --no-install-recommends "$@"; } \
    > .cache/apt.log 2>&1 || cat .cache/apt.log >&2
}

install_chromium() {
  find_chromium > /dev/null && return
  apt_install chromium
  find_chromium > /dev/null || fail "Chromium is needed to test the pages, and could not be installed from here." \
    "On Debian, as root: apt-get update && apt-get install chromium" \
    "Elsewhere install Chromium or Chrome, or name one: CHROMIUM=/path/to/chromium $0"
}

# The same engine without a browser's windows around it opens a page in three quarters of the time. Where it
# cannot be had the browser itself will do, so it is asked for once only.
install_chromium_shell() {
  if command -v chromium-headless-shell > /dev/null || [[ -e .cache/shell-asked-for ]]; then return; fi
  touch .cache/shell-asked-for
  apt_install chromium-headless-shell
}

DRIVEN=(firefox-esr webkit2gtk-driver xvfb chromium chromium-driver) # what tests/pages/driving.py starts
find_driven() { local each; for each in firefox-esr WebKitWebDriver Xvfb chromedriver; do command -v "$each" || return; done; }

install_driven() {
  find_driven > /dev/null && return
  apt_install "${DRIVEN[@]}"
  find_driven > /dev/null || fail "Firefox, WebKit and what drives them could not be installed from here." \
    "On Debian, as root: apt-get update && apt-get install ${DRIVEN[*]}"
}

prepare_site() {
  mkdir -p .cache
  step "virtual environment" make_venv
  step "Python packages" install_python_packages requirements.txt
  step "npm packages" install_npm_packages
}

prepare_tests() {
  prepare_site
  step "Python packages for tests" install_python_packages requirements-test.txt
}

# prepare_browser [CANDIDATE...]
prepare_browser() {
  step "Chromium" install_chromium
  CHROMIUM=$(find_chromium "$@")
  export CHROMIUM
}

build_site() { step "site" "$VENV_PYTHON" -m scripts.building "$@"; }
