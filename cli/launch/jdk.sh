# Finding a JDK; read by ./cistern and ./check with `.`

# Sets feature to the version of the JDK in folder $1: 25, 17, … or 0 when there is none.
feature_of() {
  feature=0
  [ -x "$1/bin/java" ] && [ -x "$1/bin/javac" ] && [ -r "$1/release" ] || return 0
  while IFS='"' read -r key value _; do
    if [ "$key" = "JAVA_VERSION=" ]; then
      feature=${value%%[!0-9]*}
    fi
  done < "$1/release"
  feature=${feature:-0}
}

# Sets jdk to the first JDK from version $1 up to but not including $2; false when there is none.
# The order: JAVA_HOME, the java on the path, the usual folders.
find_jdk() {
  on_path=$(command -v java) || on_path=
  if [ -n "$on_path" ]; then
    on_path=$(readlink -f "$on_path") || on_path=
  fi
  for jdk in "${JAVA_HOME:-}" "${on_path%/bin/java}" \
    /usr/lib/jvm/* /usr/java/* /usr/local/openjdk-* /opt/java/* /opt/jdk* \
    /Library/Java/JavaVirtualMachines/*/Contents/Home \
    "${HOME:-}"/.sdkman/candidates/java/* "${HOME:-}"/.jdks/*; do
    feature_of "$jdk"
    if [ "$feature" -ge "$1" ] && [ "$feature" -lt "$2" ]; then
      return 0
    fi
  done
  return 1
}
