#include "io/xlsx_xml.hpp"

#include <expat.h>

#include <new>
#include <utility>

#include "cutback/bounds.hpp"

namespace cutback::io {
namespace {

constexpr int k_piece = 65536;
constexpr std::size_t k_most_unanswered = std::size_t{1} << 20U;
XML_Parser as_parser(void* parser) { return static_cast<XML_Parser>(parser); }

}  // namespace

const char* XmlAttributes::find(std::string_view name) const {
  for (const char** at = list_; *at != nullptr; at += 2) {
    if (name == at[0]) return at[1];
  }
  return nullptr;
}

std::string_view XmlAttributes::text(std::string_view name) const {
  const char* value = find(name);
  return value != nullptr ? std::string_view(value) : std::string_view{};
}

std::string_view XmlAttributes::relationship() const {
  for (const char** at = list_; *at != nullptr; at += 2) {
    const XmlName name = split_xml_name(at[0]);
    // Without a prefix an attribute is in no namespace.
    if (name.local == "id" && !name.prefix.empty() &&
        names_.find(name.prefix) == XmlSpace::relationships) {
      return at[1];
    }
  }
  return {};
}

bool XmlAttributes::is_true(std::string_view name) const {
  const std::string_view value = text(name);
  return value == "1" || value == "true";
}

bool XmlAttributes::is_false(std::string_view name) const {
  const std::string_view value = text(name);
  return value == "0" || value == "false";
}

/// What expat calls. No exception may pass through it, so one is kept until it has returned.
struct XmlParser::Callbacks {
  template <class Do>
  static void guard(void* data, Do what) {
    auto& self = *static_cast<XmlParser*>(data);
    self.unanswered_ = 0;
    if (self.thrown_ || self.stopped_) return;
    try {
      what(self);
    } catch (...) {
      self.thrown_ = std::current_exception();
      XML_StopParser(as_parser(self.parser_.get()), XML_FALSE);
    }
  }
  static void start(void* data, const char* name, const char** attributes) {
    guard(data, [&](XmlParser& self) { self.start(name, attributes); });
  }
  static void end(void* data, const char* name) {
    guard(data, [&](XmlParser& self) { self.end(name); });
  }
  static void text(void* data, const char* piece, int size) {
    guard(data, [&](XmlParser& self) {
      if (self.foreign_ == 0) self.handler_.text({piece, static_cast<std::size_t>(size)});
    });
  }
  static void document_type(void* data, const char*, const char*, const char*, int) {
    guard(data, [](XmlParser& self) { throw self.damaged("declares a document type"); });
  }
};

void XmlParser::Free::operator()(void* parser) const { XML_ParserFree(as_parser(parser)); }

XmlParser::XmlParser(ByteSource& source, std::string file, std::string part, std::string root,
                     XmlHandler& handler, XmlEnd end)
    : source_(source),
      file_(std::move(file)),
      part_(std::move(part)),
      root_(std::move(root)),
      handler_(handler),
      end_(end),
      parser_(XML_ParserCreate(nullptr)) {
  if (!parser_) throw std::bad_alloc();
  XML_Parser parser = as_parser(parser_.get());
  XML_SetUserData(parser, this);
  XML_SetElementHandler(parser, &Callbacks::start, &Callbacks::end);
  XML_SetCharacterDataHandler(parser, &Callbacks::text);
  XML_SetStartDoctypeDeclHandler(parser, &Callbacks::document_type);
}

XmlParser::~XmlParser() = default;

bool XmlParser::run() {
  XML_Parser parser = as_parser(parser_.get());
  while (!stopped_) {
    if (paused_) {
      paused_ = false;
      XML_ResumeParser(parser);
    } else if (!feed()) {
      return false;
    }
    if (thrown_) std::rethrow_exception(std::exchange(thrown_, nullptr));
    if (stopped_) break;
    const XML_Error error = XML_GetErrorCode(parser);
    if (error != XML_ERROR_NONE && error != XML_ERROR_SUSPENDED) {
      throw damaged("is no well-formed XML: " + std::string(XML_ErrorString(error)));
    }
    if (paused_) return true;
  }
  source_.finish();
  return false;
}

/// Hands on the next piece. @return false at the end
bool XmlParser::feed() {
  if (fed_) return false;
  XML_Parser parser = as_parser(parser_.get());
  void* buffer = XML_GetBuffer(parser, k_piece);
  if (buffer == nullptr) throw std::bad_alloc();
  const std::size_t size = source_.read(static_cast<char*>(buffer), k_piece);
  fed_ = size == 0;
  if (fed_ && end_ == XmlEnd::cut) return false;
  // A token that grows and grows would be looked through again with each piece.
  unanswered_ += size;
  if (unanswered_ > k_most_unanswered) throw damaged("holds a name or value without an end");
  XML_ParseBuffer(parser, static_cast<int>(size), fed_ ? XML_TRUE : XML_FALSE);
  return true;
}

void XmlParser::pause() {
  paused_ = true;
  XML_StopParser(as_parser(parser_.get()), XML_TRUE);
}

void XmlParser::stop() {
  stopped_ = true;
  XML_StopParser(as_parser(parser_.get()), XML_FALSE);
}

std::pair<std::size_t, std::size_t> XmlParser::place() const {
  XML_Parser parser = as_parser(parser_.get());
  const auto begin = static_cast<std::size_t>(XML_GetCurrentByteIndex(parser));
  return {begin, begin + static_cast<std::size_t>(XML_GetCurrentByteCount(parser))};
}

InputError XmlParser::damaged(const std::string& what) const {
  return xlsx_damaged("part " + part_ + " " + what, file_);
}

void XmlParser::start(const char* name, const char** attributes) {
  if (depth_ == bounds::k_xml_levels.most) {
    throw InputError(beyond(bounds::k_xml_levels, file_ + ", part " + part_));
  }
  if (!names_.enter(attributes)) throw damaged("declares too many namespaces");
  const auto [prefix, local] = split_xml_name(name);
  const auto space = names_.find(prefix);
  if (!space) throw damaged("uses the prefix " + std::string(prefix) + " without a declaration");
  const bool own = *space == XmlSpace::own;
  if (depth_ == 0 && !(own && local == root_)) throw damaged("is no " + root_);
  ++depth_;
  if (foreign_ > 0 || !own) {
    ++foreign_;
  } else {
    handler_.start(local, XmlAttributes(attributes, names_));
  }
}

void XmlParser::end(const char* name) {
  --depth_;
  names_.leave();
  if (foreign_ > 0) {
    --foreign_;
  } else {
    handler_.end(split_xml_name(name).local);
  }
}

void read_xml_part(XlsxPackage& package, const std::string& part, std::uint64_t most,
                   std::string root, XmlHandler& handler) {
  package.open(part, most);
  XmlParser parser(package, package.name(), part, std::move(root), handler);
  parser.run();
}

}  // namespace cutback::io
