#!/usr/bin/env bash
# Runs a test program once for every planted error (see MutantPlanter) and says which it noticed.
#   run.sh LIST RESULTS THREADS SECONDS TEST-PROGRAM [ARGUMENT...]
# LIST is the planter's; only the errors that RESULTS does not hold as noticed yet are run, so that a second test program
# takes on what the first one missed. An error is noticed when the program fails or takes longer than SECONDS.
set -euo pipefail
list=$1 results=$2 threads=$3 limit=$4
shift 4
touch "$results"

one() {
    local number=$1 limit=$2 out verdict rc=0
    shift 2
    out=$(AXLERISK_MUTANT=$number timeout "$limit" "$@" -stopOnFail -noLogo -noColor -maxThreads 2 2>&1) || rc=$?
    case $rc in
        0) verdict=unnoticed ;;
        124) verdict='noticed: no end' ;;
        *) verdict="noticed: $(grep -m 1 -oE '[A-Za-z_.]+\.[A-Za-z_0-9]+.*\[FAIL\]' <<< "$out" | sed 's/ *\[FAIL\]//; s/AxleRisk\.//' | cut -c1-120 || true)" ;;
    esac
    printf '%s\t%s\n' "$number" "$verdict"
}
export -f one

noticed=$(awk -F'\t' '$2 != "unnoticed" { print $1 }' "$results")
left=$(cut -f1 "$list" | grep -vxF "${noticed:-none}" || true)
kept=$(grep -v $'\tunnoticed$' "$results" || true)
printf '%s' "${kept:+$kept$'\n'}" > "$results"
printf '%s\n' $left | xargs -P "$threads" -I{} bash -c 'one "$@"' one {} "$limit" "$@" >> "$results"
echo "$(grep -c noticed: "$results") of $(wc -l < "$list") noticed; unnoticed:"
awk -F'\t' 'NR == FNR { if ($2 == "unnoticed") left[$1]; next } $1 in left' "$results" "$list"
