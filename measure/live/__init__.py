"""The same reading while it happens: engine, session, worker, trial detector and refiner."""
