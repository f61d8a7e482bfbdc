#!/usr/bin/env bash
# Makes a container image (OCI image layout, in a tar) from the jar, without a container daemon:
#   src/dist/image.sh [target/filmward.jar [target/filmward-image.tar]]
# In it: a Java runtime cut to what Filmward uses, the C libraries that this needs, the jar; no shell.
# It runs as user 10001, keeps its data in /data, listens on 8090. The same jar and JDK give the
# same image. Needs a JDK of 17 or newer with jmods, GNU tar, gzip, sha256sum, ldd.
set -euo pipefail

jar=$(realpath "${1:-target/filmward.jar}")
out=${2:-target/filmward-image.tar}
user=10001
# found by: jdeps --multi-release 17 --ignore-missing-deps --print-module-deps filmward.jar;
# and what is reached by name only: curves for TLS, charsets of files, pages inside the jar, HTTP
modules=java.base,java.desktop,java.naming,java.security.jgss,java.sql,jdk.jfr,jdk.management
modules+=,jdk.unsupported,java.net.http,jdk.charsets,jdk.crypto.ec,jdk.zipfs

[ -f "$jar" ] || { echo "image.sh: there is no $jar; run mvn package first" >&2; exit 2; }
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
layout=$work/layout
blobs=$layout/blobs/sha256
mkdir -p "$blobs"

# --- a root folder a layer
base=$work/base app=$work/app data=$work/data
mkdir -p "$base/opt" "$base/etc" "$base/tmp" "$app/opt/filmward" "$data/data"
jlink --add-modules "$modules" --strip-java-debug-attributes --no-header-files --no-man-pages \
  --compress=2 --output "$base/opt/java"
# certificates are a link to the machine's own in some distributions
cacerts=$base/opt/java/lib/security/cacerts
if [ -L "$cacerts" ] || [ ! -e "$cacerts" ]; then
  rm -f "$cacerts"
  cp -L "$(dirname "$(dirname "$(readlink -f "$(command -v jlink)")")")/lib/security/cacerts" "$cacerts"
fi
# nothing is drawn or heard here
rm -f "$base"/opt/java/lib/lib{awt_xawt,jawt,splashscreen,jsound}.so
# the database's own library, which the jar unpacks when it starts
mkdir "$work/native"
(cd "$work/native" && jar xf "$jar" "org/sqlite/native/Linux/$(uname -m)")
# every library by the path under which the loader looks for it
{
  find "$base/opt/java" "$work/native" -name '*.so' -print0 | xargs -0 ldd 2>/dev/null || true
  ldd "$base/opt/java/bin/java"
} | awk '$2 == "=>" && $3 ~ /^\// {print $3} $1 ~ /^\// && $1 !~ /:$/ {print $1}' | sort -u |
  while read -r library; do
    case $library in "$base"/*) continue ;; esac
    mkdir -p "$base$(dirname "$library")"
    cp -L "$library" "$base$library"
  done
echo "filmward:x:$user:$user::/data:/sbin/nologin" > "$base/etc/passwd"
echo "filmward:x:$user:" > "$base/etc/group"
echo "hosts: files dns" > "$base/etc/nsswitch.conf"
cp "$jar" "$app/opt/filmward/filmward.jar"
chmod -R u=rwX,go=rX "$base" "$app"
chmod 1777 "$base/tmp"
chmod 0700 "$data/data"

# --- blobs
digest() { sha256sum "$1" | cut -d ' ' -f 1; }
# add FILE: puts it among the blobs and says its digest
add() {
  local name
  name=$(digest "$1")
  mv "$1" "$blobs/$name"
  echo "$name"
}
layers=() ids=()
# layer FOLDER OWNER
layer() {
  (cd "$1" && tar --sort=name --mtime=@0 --owner="$2" --group="$2" --numeric-owner \
    -cf "$work/layer.tar" -- *)
  ids+=("\"sha256:$(digest "$work/layer.tar")\"")
  gzip -n -6 "$work/layer.tar"
  local size name
  size=$(stat -c %s "$work/layer.tar.gz")
  name=$(add "$work/layer.tar.gz")
  layers+=("{\"mediaType\":\"application/vnd.oci.image.layer.v1.tar+gzip\",\"digest\":\"sha256:$name\",\"size\":$size}")
}
layer "$base" 0
layer "$app" 0
layer "$data" "$user"
join() { local IFS=,; echo "$*"; }

architecture=$(uname -m | sed 's/x86_64/amd64/; s/aarch64/arm64/')
cat > "$work/config.json" <<JSON
{"created":"1970-01-01T00:00:00Z","architecture":"$architecture","os":"linux",
"config":{"User":"$user:$user","WorkingDir":"/data","Volumes":{"/data":{}},
"ExposedPorts":{"8090/tcp":{}},"StopSignal":"SIGTERM",
"Env":["PATH=/opt/java/bin","LANG=C.UTF-8","FILMWARD_LOG_FORMAT=json"],
"Entrypoint":["/opt/java/bin/java","-XX:MaxRAMPercentage=60","-jar","/opt/filmward/filmward.jar"],
"Cmd":["serve","--data","/data","--host","0.0.0.0","--port","8090"],
"Labels":{"org.opencontainers.image.title":"Filmward","org.opencontainers.image.licenses":"Apache-2.0"}},
"rootfs":{"type":"layers","diff_ids":[$(join "${ids[@]}")]}}
JSON
config_size=$(stat -c %s "$work/config.json")
config=$(add "$work/config.json")
cat > "$work/manifest.json" <<JSON
{"schemaVersion":2,"mediaType":"application/vnd.oci.image.manifest.v1+json",
"config":{"mediaType":"application/vnd.oci.image.config.v1+json","digest":"sha256:$config","size":$config_size},
"layers":[$(join "${layers[@]}")]}
JSON
manifest_size=$(stat -c %s "$work/manifest.json")
manifest=$(add "$work/manifest.json")
cat > "$layout/index.json" <<JSON
{"schemaVersion":2,"mediaType":"application/vnd.oci.image.index.v1+json","manifests":[
{"mediaType":"application/vnd.oci.image.manifest.v1+json","digest":"sha256:$manifest","size":$manifest_size,
"annotations":{"org.opencontainers.image.ref.name":"filmward:latest"}}]}
JSON
echo '{"imageLayoutVersion":"1.0.0"}' > "$layout/oci-layout"
tar -C "$layout" --sort=name --mtime=@0 --owner=0 --group=0 --numeric-owner -cf "$out" oci-layout index.json blobs
echo "$out: sha256:$manifest"
