"""Threads of the window.

Public names:

    garbage_collection: collect_garbage_in_gui_thread
    worker_thread: BackgroundWorker
"""
