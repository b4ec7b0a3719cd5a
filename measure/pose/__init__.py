"""Pose inference: the network, passes of the ensemble, jobs, worker process and supervisor.

Public names:

    child_process: SilentWorkerError, WorkerError
    ensemble: ModelSet, installed_models, models_for
    inference: PoseEstimator, RestartingEstimator, pose_frame, unreadable_frame
    jobs: ClipInfo, ClipJob, InferencePass, KeptPicture, PictureJob, WARMUP_RUNS
    memory: release_freed
    message_pipe: GarbledError, Message, Text, decoder_of
    messages: Alive, LoadModel, Ready, are_people
    network: PoseNetwork
    supervisor: PoseProcess, WorkerSupervisor
    worker: Worker, WorkerPipes
"""
