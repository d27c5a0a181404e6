// Nothing runs by itself: the worker asks Engine.
return;
