"""Many clips: worker processes or any executor, a results file that a run resumes from, a
summary.
"""
