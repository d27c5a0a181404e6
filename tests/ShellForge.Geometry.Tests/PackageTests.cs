using System.Xml.Linq;
using ShellForge.Geometry.Booleans;
using ShellForge.Testing;

namespace ShellForge.Geometry.Tests;

/// <summary>What the package promises to those who build on it.</summary>
public class PackageTests
{
    [Fact]
    public void The_public_members_are_the_accepted_ones() =>
        Assert.Equal(Golden.Text("api/ShellForge.Geometry.txt", Api()), Api());

    [Fact]
    public void Nothing_but_NetTopologySuite_is_depended_on()
    {
        XDocument project = XDocument.Load(Repository.At("src", "ShellForge.Geometry", "ShellForge.Geometry.csproj"));

        Assert.Equal("NetTopologySuite", Assert.Single(project.Descendants("PackageReference")).Attribute("Include")!.Value);
        Assert.Empty(project.Descendants("ProjectReference"));
        Assert.All(
            typeof(SolidEvaluator).Assembly.GetReferencedAssemblies(),
            a => Assert.True(a.Name is "NetTopologySuite" || a.Name!.StartsWith("System.", StringComparison.Ordinal), a.Name));
    }

    private static string Api() => PublicApi.Of(typeof(SolidEvaluator).Assembly);
}
