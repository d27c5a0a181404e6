#!/usr/bin/env bash
# slurm-two-nodes.sh BASE JOB FOLDER: runs an array job on a Slurm of two nodes on this machine, and takes one node away in the middle.
# Everything lives in BASE and runs in the foreground; it is ended by its process numbers. What the lost node has begun goes on writing.
set -euo pipefail
base=$1 job=$2 folder=$3
mkdir -p "$base"/{munge,msock,state,log,spool-n1,spool-n2}
chmod 755 "$base" "$base/msock"; chmod 700 "$base/munge"
host=$(hostname -s)
dd if=/dev/urandom bs=1 count=1024 of="$base/munge/key" status=none
chmod 600 "$base/munge/key"
cat > "$base/slurm.conf" <<CONF
ClusterName=forge
SlurmctldHost=$host(127.0.0.1)
SlurmUser=root
SlurmdUser=root
AuthType=auth/munge
AuthInfo=socket=$base/msock/munge.socket
CredType=cred/munge
SlurmctldPort=16817
StateSaveLocation=$base/state
SlurmctldPidFile=$base/slurmctld.pid
SlurmctldLogFile=$base/log/slurmctld.log
SlurmdSpoolDir=$base/spool-%n
SlurmdPidFile=$base/slurmd-%n.pid
SlurmdLogFile=$base/log/slurmd-%n.log
ProctrackType=proctrack/linuxproc
TaskPlugin=task/none
JobAcctGatherType=jobacct_gather/none
AccountingStorageType=accounting_storage/none
MpiDefault=none
SwitchType=switch/none
SelectType=select/cons_tres
SelectTypeParameters=CR_Core
SchedulerType=sched/builtin
SchedulerParameters=batch_sched_delay=0,sched_interval=1,sched_min_interval=1000
ReturnToService=2
MinJobAge=300
KillWait=2
InactiveLimit=0
SlurmctldTimeout=30
SlurmdTimeout=30
NodeName=n1 NodeHostname=$host NodeAddr=127.0.0.1 Port=17001 CPUs=1 Boards=1 SocketsPerBoard=1 CoresPerSocket=1 ThreadsPerCore=1 RealMemory=4000 State=UNKNOWN
NodeName=n2 NodeHostname=$host NodeAddr=127.0.0.1 Port=17002 CPUs=1 Boards=1 SocketsPerBoard=1 CoresPerSocket=1 ThreadsPerCore=1 RealMemory=4000 State=UNKNOWN
PartitionName=main Nodes=n1,n2 Default=YES MaxTime=10 State=UP
CONF
# A cgroup plugin is always loaded; named by hand it starts where no cgroup is mounted.
printf 'CgroupPlugin=cgroup/v1\nCgroupAutomount=no\n' > "$base/cgroup.conf"
export SLURM_CONF=$base/slurm.conf
pids=() orphans=()
stop() {
  for p in "${orphans[@]:-}"; do [ -n "$p" ] && { pkill -9 -P "$p" 2>/dev/null || true; kill -9 "$p" 2>/dev/null || true; }; done
  for p in "${pids[@]:-}"; do [ -n "$p" ] && kill "$p" 2>/dev/null || true; done
  wait 2>/dev/null || true
}
trap stop EXIT
munged -F --key-file="$base/munge/key" --socket="$base/msock/munge.socket" --pid-file="$base/msock/munged.pid" --log-file="$base/munge/munged.log" --seed-file="$base/munge/seed" --num-threads=2 --force 2>"$base/log/munged.err" & pids+=($!)
for _ in $(seq 50); do [ -S "$base/msock/munge.socket" ] && break; sleep 0.1; done
slurmctld -D -f "$SLURM_CONF" >"$base/log/slurmctld.out" 2>&1 & pids+=($!)
slurmd -D -N n1 -f "$SLURM_CONF" >"$base/log/slurmd-n1.out" 2>&1 & pids+=($!)
slurmd -D -N n2 -f "$SLURM_CONF" >"$base/log/slurmd-n2.out" 2>&1 & lost=$!
ready=
for _ in $(seq 100); do [ "$(sinfo -h -N -o %t 2>/dev/null | grep -c idle)" = 2 ] && { ready=yes; break; }; sleep 0.2; done
[ -n "$ready" ] || { kill "$lost" 2>/dev/null || true; echo "slurm did not start"; exit 75; }

id=$(sbatch --parsable -D "$(dirname "$job")" -o "$base/log/%A_%a.txt" "$job")
# The node is lost while a variant of its first task is half made: as soon as its writer has begun one.
for _ in $(seq 400); do
  begun=$(squeue -h -t R -w n2 -o %i)
  [ -n "$begun" ] && [ "$(find "$folder/sweep-state" -mindepth 1 -maxdepth 1 -name 'writer-*' 2>/dev/null | wc -l)" -ge 2 ] && break
  sleep 0.05
done
mapfile -t orphans < <(pgrep -P "$lost" || true)
kill -9 "$lost"
scontrol update nodename=n2 state=down reason=lost
echo "lost n2 while it ran ${begun:-nothing}"

# A task taken from a lost node waits two minutes before it starts again; a test doesn't.
for _ in $(seq 300); do
  [ -z "$(squeue -h -j "$id" -t PD,R,CG 2>/dev/null)" ] && break
  for task in $(squeue -h -t PD -o %i 2>/dev/null | grep -v '\[' || true); do scontrol update "JobId=$task" StartTime=now 2>/dev/null || true; done
  sleep 0.2
done
scontrol -o show job "$id" | grep -oE "ArrayTaskId=[0-9,-]+|JobState=[A-Z]+|Restarts=[0-9]+|NodeList=n[0-9]" | paste -sd' '
[ -z "$(squeue -h -j "$id" -t PD,R,CG 2>/dev/null)" ] || { echo "the array did not end"; exit 1; }
