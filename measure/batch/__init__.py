"""Many clips: worker processes or any executor, a results file that a run resumes from, a
summary.

Public names:

    cache_key: ResultKeys, content_hash
    dask_cluster: read_on_cluster
    results_file: ResultsFile, save_accepted_trials
    run: Earlier, nothing_earlier, read_many, usual_workers
    summary: summary_lines, write_table
"""
