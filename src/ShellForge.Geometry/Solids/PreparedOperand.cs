namespace ShellForge.Geometry.Solids;

/// <summary>What the boolean kernel keeps with a solid that it has met; only the kernel looks inside.</summary>
internal abstract class PreparedOperand;
