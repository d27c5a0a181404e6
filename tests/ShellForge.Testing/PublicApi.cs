using System.Diagnostics.CodeAnalysis;
using System.Reflection;
using System.Text;

namespace ShellForge.Testing;

/// <summary>What an assembly shows to its users, as text that a person can read and a test can compare.</summary>
[RequiresUnreferencedCode("Looks at every member of an assembly by reflection.")]
public static class PublicApi
{
    private const BindingFlags Own = BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance | BindingFlags.Static
        | BindingFlags.DeclaredOnly;

    /// <summary>One block a type, one line a member, both in order of name.</summary>
    public static string Of(Assembly assembly)
    {
        var text = new StringBuilder();
        foreach (Type type in assembly.GetExportedTypes().OrderBy(t => t.FullName, StringComparer.Ordinal))
        {
            text.Append(Kind(type)).Append(' ').Append(type.FullName).Append('\n');
            foreach (string line in Members(type).Distinct().Order(StringComparer.Ordinal))
            {
                text.Append("    ").Append(line).Append('\n');
            }
        }

        return text.ToString();
    }

    private static IEnumerable<string> Members(Type type)
    {
        if (type.IsEnum)
        {
            return Enum.GetNames(type);
        }

        return type.GetMembers(Own).Where(IsShown).Select(Line);
    }

    private static bool IsShown(MemberInfo member) => !member.Name.Contains('<') && member switch
    {
        MethodInfo method => Shows(method) && (!method.IsSpecialName || method.Name.StartsWith("op_", StringComparison.Ordinal)),
        ConstructorInfo constructor => Shows(constructor),
        FieldInfo field => field.IsPublic || field.IsFamily,
        PropertyInfo property => property.GetAccessors(true).Any(Shows),
        EventInfo happening => Shows(happening.AddMethod!),
        _ => false,
    };

    private static bool Shows(MethodBase method) => method.IsPublic || method.IsFamily || method.IsFamilyOrAssembly;

    private static string Line(MemberInfo member) => member switch
    {
        MethodInfo method => $"{Static(method)}{Name(method.ReturnType)} {method.Name}({Parameters(method)})",
        ConstructorInfo constructor => $"new({Parameters(constructor)})",
        FieldInfo field => $"{(field.IsLiteral ? "const " : field.IsStatic ? "static " : "")}{Name(field.FieldType)} {field.Name}",
        PropertyInfo property =>
            $"{Static(property.GetAccessors(true)[0])}{Name(property.PropertyType)} {property.Name} {{ {Accessors(property)} }}",
        _ => member.ToString()!,
    };

    private static string Static(MethodBase method) => method.IsStatic ? "static " : "";

    private static string Accessors(PropertyInfo property) => string.Join(" ", property.GetAccessors(true).Where(Shows)
        .Select(a => a == property.GetMethod ? "get;" : IsInit(a) ? "init;" : "set;"));

    private static bool IsInit(MethodInfo setter) =>
        setter.ReturnParameter.GetRequiredCustomModifiers().Any(m => m.Name == "IsExternalInit");

    private static string Parameters(MethodBase method) =>
        string.Join(", ", method.GetParameters().Select(p => $"{Name(p.ParameterType)} {p.Name}{(p.HasDefaultValue ? " = default" : "")}"));

    private static string Kind(Type type) => type.IsEnum ? "enum"
        : type.IsInterface ? "interface"
        : type.IsValueType ? "struct"
        : type.IsAbstract && type.IsSealed ? "static class"
        : type.IsAbstract ? "abstract class" : type.IsSealed ? "sealed class" : "class";

    private static string Name(Type type)
    {
        if (type.IsByRef)
        {
            return "ref " + Name(type.GetElementType()!);
        }

        if (type.IsArray)
        {
            return Name(type.GetElementType()!) + "[]";
        }

        return type.IsGenericType
            ? $"{type.Name.Split('`')[0]}<{string.Join(", ", type.GetGenericArguments().Select(Name))}>"
            : type.Name;
    }
}
