#!/usr/bin/env bash
# A sweep on a Slurm cluster: an array of parts, and a gather that waits for all of them.
#   submit.sh PLAN.json PARTS TABLE.csv|TABLE.parquet [options for sbatch, such as --partition=long --cpus-per-task=16]
# PLAN and TABLE lie on a file system that all machines see; the parts go to TABLE.shards beside it. BALLSIM says how the command is called where it is not "ballsim".
# Submitted once more after a failure, it computes what is missing and nothing else.
set -euo pipefail
if [ "$#" -lt 3 ]; then
    echo "usage: submit.sh PLAN.json PARTS TABLE.csv|TABLE.parquet [sbatch options]" >&2
    exit 2
fi
here=$(cd "$(dirname "$0")" && pwd)
plan=$1
parts=$2
table=$3
shift 3

array=$(sbatch --parsable "$@" --array="1-$parts" "$here/sweep.sbatch" "$plan" "$table.shards" "$parts")
gather=$(sbatch --parsable "$@" --dependency="afterok:$array" "$here/gather.sbatch" "$table.shards" "$table")
echo "array $array, gather $gather"
