namespace ShellForge.Planning.Plan;

/// <summary>What closes a housing in front of the board.</summary>
/// <param name="Cover">The cover.</param>
/// <param name="Diffuser">The diffuser.</param>
/// <param name="Baffle">The baffle; null without one.</param>
public sealed record FrontSide(CoverPlan Cover, DiffuserPlan Diffuser, BafflePlan? Baffle);
