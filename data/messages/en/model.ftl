# The job, the survey, the network and the design.
